using BoothWatch.Limits;
using Xunit.Abstractions;

namespace BoothWatch.Tests.Limits;

/// <summary>Hundreds of shops with known truth; every draw comes from a seed. Rates are held against three binomial standard deviations.</summary>
public class SimulatedShopTests(ITestOutputHelper output)
{
    private const int Shops = 300;
    private static readonly LimitRules Rules = new();

    [Theory]
    [InlineData(10, 0.0)]
    [InlineData(40, 0.0)]
    [InlineData(120, 0.0)]
    [InlineData(40, 0.02)]
    public void Threshold_OfShopsOutOfThePrior_LiesInItsBandAtTheStatedRate(int coats, double wrongMarks)
    {
        int[] places = new int[3];
        for (int seed = 1; seed <= Shops; seed++)
        {
            SimulatedShop shop = SimulatedShop.FromPrior(seed, wrongMarks);
            CredibleBand band = new ThresholdPosterior(shop.Spray(coats, Rules), Rules).Threshold;
            places[shop.ThresholdC < band.LowC ? 0 : shop.ThresholdC > band.HighC ? 2 : 1]++;
        }

        output.WriteLine($"{coats} coats: below {places[0]}, in {places[1]}, above {places[2]} of {Shops}");
        Assert.InRange(places[1], AtLeast(0.9), AtMost(0.9));
        Assert.True(places[2] <= AtMost(0.05), $"{places[2]} thresholds lie above their bands");
        Assert.True(places[0] <= AtMost(0.05), $"{places[0]} thresholds lie below their bands");
    }

    [Fact]
    public void NeededMargin_OfShopsOutOfThePrior_IsCoveredByItsUpperEndAtTheStatedRate()
    {
        int covered = 0;
        for (int seed = 1; seed <= Shops; seed++)
        {
            SimulatedShop shop = SimulatedShop.FromPrior(seed);
            double needed = shop.ThresholdC + Rules.AllowanceC(shop.ScatterC);
            covered += needed <= new ThresholdPosterior(shop.Spray(60, Rules), Rules).NeededMarginC(0.95) ? 1 : 0;
        }

        output.WriteLine($"{covered} of {Shops}");
        Assert.InRange(covered, AtLeast(0.95), AtMost(0.95));
    }

    [Fact]
    public void LoweredLimit_InNearlyEveryShop_LeavesTheStatedRisk()
    {
        (int lowered, int safe) = (0, 0);
        for (int seed = 1; seed <= 150; seed++)
        {
            SimulatedShop shop = SimulatedShop.FromPrior(seed);
            ShopLimit limit = ShopLimit.Of(shop.Spray(120, Rules, follows: true), 120, Rules);
            if (limit.Change == LimitChange.Lowered)
            {
                lowered++;
                safe += shop.RiskAt(limit.RequiredMarginC) <= 0.05 ? 1 : 0;
            }
        }

        output.WriteLine($"{safe} safe of {lowered} lowered");
        Assert.True(lowered >= 30, $"only {lowered} shops ever lower it");
        Assert.True(safe >= 0.95 * lowered, $"{lowered - safe} of {lowered} lowered limits leave more than 5 %");
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void Limit_OfAShopThatBlushesAtOneDegree_RisesToIt(double scatterC)
    {
        (int raised, int enough, int low, int wild) = (0, 0, 0, 0);
        for (int seed = 1; seed <= 200; seed++)
        {
            SimulatedShop shop = new(seed, 1, scatterC);
            ShopLimit limit = ShopLimit.Of(shop.Spray(40, Rules, follows: true), 40, Rules);
            raised += limit.Change == LimitChange.Raised ? 1 : 0;
            low += limit.Change == LimitChange.Lowered ? 1 : 0;
            enough += shop.RiskAt(limit.RequiredMarginC) <= 0.05 ? 1 : 0;
            wild += limit.RequiredMarginC > 2.2 ? 1 : 0;
        }

        output.WriteLine($"scatter {scatterC}: raised {raised}, enough {enough}, lowered {low}, above 2.2 {wild} of 200");
        Assert.True(raised >= 180, $"raised in {raised} of 200 shops");
        Assert.True(enough >= 160, $"enough in {enough} of 200 shops");
        Assert.Equal(0, low);
        Assert.True(wild <= 10, $"above 2.2 °C in {wild} of 200 shops");
    }

    [Fact]
    public void Limit_OfAShopThatTheModelDescribes_IsSeldomRaisedFar()
    {
        int far = 0;
        for (int seed = 1; seed <= 200; seed++)
        {
            SimulatedShop shop = new(seed, 0, 0.4);
            far += ShopLimit.Of(shop.Spray(60, Rules, follows: true), 60, Rules).RequiredMarginC > 1.2 ? 1 : 0;
        }

        output.WriteLine($"{far} of 200 above 1.2 °C");
        Assert.True(far <= 10, $"{far} of 200 shops end above 1.2 °C");
    }

    private static int AtLeast(double rate) => (int)Math.Floor((Shops * rate) - (3 * Math.Sqrt(Shops * rate * (1 - rate))));

    private static int AtMost(double rate) => (int)Math.Ceiling((Shops * rate) + (3 * Math.Sqrt(Shops * rate * (1 - rate))));
}
