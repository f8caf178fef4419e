namespace BoothWatch.Tests.Film;

/// <summary>
/// Blush resistance of neat solvents, % RH at 26.7 °C (80 °F), as solvent makers print it. The sheets do not say what the solution is flowed
/// out on. Assumed here: 8 % by mass of cellulose nitrate, 200 µm wet, on a plate of 1 mm glass in air of 0.5 m/s.
/// </summary>
public class BlushResistanceTests
{
    [Fact]
    public void NButylAcetate_AtEightyFahrenheit_ResistsToEightyThreePercent() =>
        Assert.Equal(83, CriticalPct("n-butyl acetate"), 2.0);

    [Fact]
    public void NeatSolvents_AgainstRememberedValues_RankAlike()
    {
        double[] model = [.. PublishedFigures.BlushResistance.Select(row => CriticalPct(row.Solvent))];
        Assert.InRange(RankCorrelation(model, [.. PublishedFigures.BlushResistance.Select(row => row.Pct)]), 0.97, 1);
    }

    [Fact]
    public void NeatSolvents_AgainstRememberedValues_StayWithinEightPoints() =>
        Assert.All(PublishedFigures.BlushResistance, row => Assert.InRange(CriticalPct(row.Solvent) - row.Pct, -8, 8));

    [Theory]
    [InlineData("acetone")]
    [InlineData("methyl acetate")]
    public void FastestSolvents_OnThinPlate_BlushInRatherDryAir(string solvent) => Assert.InRange(CriticalPct(solvent), 10, 40);

    [Fact]
    public void FastSolvent_OnThickGlass_ComesOutWarmerThanOnThinPlate()
    {
        double thick = TestCoat.BlushResistancePct("ethyl acetate", 0.006);
        Assert.InRange(thick - CriticalPct("ethyl acetate"), 15, 45);
    }

    private static double CriticalPct(string solvent) => TestCoat.BlushResistancePct(solvent);

    private static double RankCorrelation(double[] left, double[] right)
    {
        double[] a = Ranks(left);
        double[] b = Ranks(right);
        double mean = a.Average();
        return a.Zip(b, (x, y) => (x - mean) * (y - mean)).Sum()
            / Math.Sqrt(a.Sum(x => (x - mean) * (x - mean)) * b.Sum(y => (y - mean) * (y - mean)));
    }

    private static double[] Ranks(double[] values) =>
        [.. values.Select(value => values.Count(other => other < value) + ((values.Count(other => other == value) - 1) / 2.0))];
}
