using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

public class CrpsTests
{
    [Fact]
    public void OneMember_IsTheAbsoluteError() => Assert.Equal(2.5, Crps.Of([4.0], 1.5), 12);

    // Closed form for the normal distribution, Gneiting and Raftery (2007), after equation (21): for an outcome at the mean it is
    // sigma (sqrt(2) - 1)/sqrt(pi) = 0.23370 sigma; for one a sigma away 0.60244 sigma (from the same formula by hand).
    [Theory]
    [InlineData(0, 0.23370)]
    [InlineData(1, 0.60244)]
    public void ManyMembersOfANormal_MeetTheClosedForm(double outcome, double expected)
    {
        // Quantiles of the normal distribution from its density, summed in steps of 0.0001.
        List<double> members = [];
        double share = 0;
        for (double x = -6; x < 6; x += 0.0001)
        {
            share += 0.0001 * Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI);
            if (share * 10_000 >= members.Count + 0.5)
            {
                members.Add(x);
            }
        }

        Assert.Equal(expected, Crps.Of([.. members], outcome), 0.001);
    }

    // The mean over all quantiles of the pinball loss is half the score: the same reference, section 4.2.
    [Fact]
    public void Score_IsTwiceTheMeanPinballLoss()
    {
        double[] members = [-1.2, 0.1, 0.4, 2.0, 3.5];
        const double Outcome = 0.9;
        double pinball = Enumerable.Range(0, 100_000).Select(i => (i + 0.5) / 100_000).Average(share =>
        {
            double quantile = MarginPaths.QuantileOf(members, share);
            return Outcome < quantile ? (1 - share) * (quantile - Outcome) : share * (Outcome - quantile);
        });
        Assert.Equal(2 * pinball, Crps.Of([.. members], Outcome), 0.0001);
    }
}
