using System.Collections.Immutable;
using BoothWatch.Limits;

namespace BoothWatch.Tests.Limits;

/// <summary>The rules of the shop's own limit; own choices, see docs/limit.md.</summary>
public class ShopLimitTests
{
    private static readonly LimitRules Rules = new();
    private static readonly DateOnly Day = new(2026, 6, 3);

    private static LimitCoat Coat(int n, double marginC, bool blushed) => new(n, Day.AddDays(n), marginC, 1.0, blushed);

    private static LimitCoat[] Coats(int count, double marginC, bool blushed) => [.. Enumerable.Range(0, count).Select(n => Coat(n, marginC, blushed))];

    private static ShopLimit Of(params LimitCoat[] coats) => ShopLimit.Of(coats, coats.Length, Rules);

    [Fact]
    public void Limit_WithoutCoats_StaysAsConfigured()
    {
        ShopLimit limit = Of();
        Assert.Equal(LimitChange.None, limit.Change);
        Assert.Equal(0.5, limit.RequiredMarginC);
        Assert.Equal(0, limit.BlushesBelowC);

        // The prior itself: 90 % of a normal distribution of 1 °C lies within 1.645 °C.
        Assert.Equal(-1.645, limit.Threshold.LowC, 2);
        Assert.Equal(0, limit.Threshold.LikelyC, 2);
        Assert.Equal(1.645, limit.Threshold.HighC, 2);
    }

    [Theory]
    [InlineData(19, LimitChange.None)]
    [InlineData(20, LimitChange.Lowered)]
    public void Limit_OfCoatsThatHeldThoughTheModelSaidNo_FallsFromTheStatedNumberOn(int coats, LimitChange expected) =>
        Assert.Equal(expected, Of(Coats(coats, -1.0, blushed: false)).Change);

    [Fact]
    public void Limit_HoweverGoodTheEvidence_NeverFallsBelowTheFloor() =>
        Assert.Equal(0.2, Of(Coats(300, -3.0, blushed: false)).RequiredMarginC);

    [Fact]
    public void Limit_HoweverBadTheEvidence_NeverRisesAboveTheCeiling() =>
        Assert.Equal(3, Of(Coats(60, 4.5, blushed: true)).RequiredMarginC);

    [Fact]
    public void Limit_OfClearCoatsFarFromTheLimit_Stays() => Assert.Equal(LimitChange.None, Of(Coats(500, 6.0, blushed: false)).Change);

    [Fact]
    public void Limit_OfCloseCoatsOnFewDays_Stays()
    {
        LimitCoat[] oneWeek = [.. Coats(40, -1.0, blushed: false).Select(coat => coat with { Day = Day.AddDays((int)(coat.CoatId % 4)) })];
        Assert.Equal(LimitChange.None, Of(oneWeek).Change);
    }

    [Fact]
    public void Limit_OfAShopThatMarksOnlySome_DoesNotFall()
    {
        LimitCoat[] marked = Coats(30, -1.0, blushed: false);
        Assert.Equal(LimitChange.Lowered, ShopLimit.Of(marked, 60, Rules).Change);
        Assert.Equal(LimitChange.None, ShopLimit.Of(marked, 61, Rules).Change);
    }

    [Theory]
    [InlineData(1, LimitChange.None)]
    [InlineData(2, LimitChange.Raised)]
    public void Limit_OfCoatsThatBlushedThoughTheModelSaidNo_RisesFromTheSecondOn(int coats, LimitChange expected) =>
        Assert.Equal(expected, Of(Coats(coats, 1.0, blushed: true)).Change);

    [Fact]
    public void Limit_OfCoatsThatBlushedAsTheModelSaid_Stays() => Assert.Equal(LimitChange.None, Of(Coats(10, -1.5, blushed: true)).Change);

    [Fact]
    public void Limit_Raised_WaitsBelowTheThreshold()
    {
        ShopLimit limit = Of([.. Coats(8, 1.0, blushed: true), .. Coats(8, 2.5, blushed: false)]);
        Assert.Equal(LimitChange.Raised, limit.Change);
        Assert.InRange(limit.BlushesBelowC, 0.8, limit.RequiredMarginC);
        Assert.InRange(limit.RequiredMarginC, limit.Threshold.LikelyC, limit.NeededMargin.HighC + 0.1);
    }

    [Fact]
    public void Limit_WithOneWrongMarkFarOut_MovesLittle()
    {
        LimitCoat[] good = Coats(40, 0.6, blushed: false);
        double without = new ThresholdPosterior(good, Rules).ThresholdC(0.95);
        double with = new ThresholdPosterior([.. good, Coat(99, 6, blushed: true)], Rules).ThresholdC(0.95);
        Assert.InRange(with - without, 0, 0.05);

        // Without the lapse share the same mark would own the answer.
        LimitRules trusting = Rules with { LapseShare = 0 };
        Assert.True(
            new ThresholdPosterior([.. good, Coat(99, 6, blushed: true)], trusting).ThresholdC(0.95) - new ThresholdPosterior(good, trusting).ThresholdC(0.95) > 0.5);
    }

    [Fact]
    public void Posterior_InAnyOrderOfTheCoats_IsTheSame()
    {
        LimitCoat[] coats = [.. Coats(5, 1, blushed: true), .. Coats(9, 0.4, blushed: false), .. Coats(9, 2, blushed: false)];
        Assert.Equal(new ThresholdPosterior(coats, Rules).ThresholdC(0.9), new ThresholdPosterior(coats.Reverse(), Rules).ThresholdC(0.9), 9);
    }

    [Theory]
    [InlineData(double.NaN, 1.0)]
    [InlineData(1.0, double.NaN)]
    [InlineData(double.PositiveInfinity, 1.0)]
    [InlineData(1.0, -1.0)]
    public void Posterior_OfAFigureThatIsNone_Refuses(double marginC, double uncertaintyC) =>
        Assert.Contains("coat 7", Assert.Throws<ArgumentException>(() => new ThresholdPosterior([new LimitCoat(7, Day, marginC, uncertaintyC, false)], Rules)).Message, StringComparison.Ordinal);

    [Fact]
    public void Curve_OverTheMargin_FallsAndLiesInItsBand()
    {
        ImmutableArray<BlushCurvePoint> curve = BlushCurve.Of([.. Coats(5, 0.3, blushed: true), .. Coats(9, 1.4, blushed: false)], Rules);
        Assert.All(curve, point => Assert.True(point.Low <= point.Likely && point.Likely <= point.High));
        Assert.All(curve.Zip(curve.Skip(1)), pair => Assert.True(pair.Second.Likely <= pair.First.Likely));
        Assert.InRange(curve[0].Likely, 0.9, 1);
        Assert.InRange(curve[^1].Likely, 0, 0.1);
    }
}
