using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

public class PairedDifferenceTests
{
    // Tables of Student's t: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2.
    [Theory]
    [InlineData(0.975, 4, 2.776)]
    [InlineData(0.975, 9, 2.262)]
    [InlineData(0.975, 29, 2.045)]
    [InlineData(0.95, 10, 1.812)]
    [InlineData(0.99, 20, 2.528)]
    public void Quantile_MeetsTheTable(double share, int freedom, double expected) =>
        Assert.Equal(expected, StudentT.Quantile(share, freedom), 0.005 * expected);

    [Theory]
    [InlineData(0.0, 15)]
    [InlineData(0.0, 40)]
    [InlineData(0.3, 40)]
    public void DaysThatDifferByChanceAlone_HardlyEverWin(double likeness, int days)
    {
        Random random = new(7);
        int wins = Enumerable.Range(0, 4000).Count(_ => PairedDifference.Of(Noise(random, likeness, days, 0)).Wins);
        Assert.InRange(wins / 4000.0, 0.005, 0.045);
    }

    [Fact]
    public void ARealDifference_NearlyAlwaysWins()
    {
        Random random = new(7);
        Assert.InRange(Enumerable.Range(0, 500).Count(_ => PairedDifference.Of(Noise(random, 0, 30, -0.8)).Wins) / 500.0, 0.95, 1);
    }

    [Theory]
    [InlineData]
    [InlineData(-1.0)]
    [InlineData(-1.0, -1.0)]
    public void TooFewDays_NeverWin(params double[] differences) => Assert.False(PairedDifference.Of(differences).Wins);

    private static double[] Noise(Random random, double likeness, int days, double mean)
    {
        double[] noise = new double[days];
        double state = 0;
        for (int i = 0; i < days; i++)
        {
            double normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            state = (likeness * state) + (Math.Sqrt(1 - (likeness * likeness)) * normal);
            noise[i] = mean + state;
        }

        return noise;
    }
}
