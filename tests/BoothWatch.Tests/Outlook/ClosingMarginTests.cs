using BoothWatch.Outlook;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Outlook;

/// <summary>Expected times are worked by hand: margin over fall.</summary>
public class ClosingMarginTests
{
    private const double NowS = 100_000;

    [Fact]
    public void Margin_FallingSteadily_GivesTheTimeUntilItIsUsedUp()
    {
        // 2.0 °C now, falling 3 °C/h: 40 min.
        ClosingMargin closing = ClosingMargin.Of(Minutes(20, backS => 2.0 + (3.0 * backS / 3600)), NowS)!;
        Assert.Equal(40, closing.Left.TotalMinutes, 0.01);
        Assert.Equal(40, closing.Least.TotalMinutes, 0.01);
        Assert.Equal(40, closing.Most.TotalMinutes, 0.01);
        Assert.Equal(3, closing.FallCPerH, 1e-6);
    }

    [Fact]
    public void Margin_FallingThroughNoise_GivesARangeAroundTheTruth()
    {
        Random random = new(7);
        ClosingMargin closing = ClosingMargin.Of(Minutes(20, backS => 2.0 + (3.0 * backS / 3600) + (0.3 * (random.NextDouble() - 0.5))), NowS)!;
        Assert.InRange(40, closing.Least.TotalMinutes, closing.Most.TotalMinutes);
        Assert.True(closing.Least < closing.Left && closing.Left < closing.Most);
    }

    [Theory]
    [InlineData(2.0, 0.0)]    // steady
    [InlineData(2.0, -3.0)]   // opening
    [InlineData(2.0, 0.8)]    // 0.27 °C over the window: within what a humidity sensor wanders
    [InlineData(-0.1, 3.0)]   // used up already
    [InlineData(9.0, 1.5)]    // 6 h: farther than a line can see
    public void Margin_ThatSaysNothing_GivesNothing(double nowC, double fallCPerH) =>
        Assert.Null(ClosingMargin.Of(Minutes(20, backS => nowC + (fallCPerH * backS / 3600)), NowS));

    [Fact]
    public void Noise_Alone_RarelySpeaks()
    {
        // 3 standard errors with 8 degrees of freedom: 0.85 % on one side (Student's t, tables). 1,000 windows of noise wide enough for the least fall.
        Random random = new(11);
        int spoken = Enumerable.Range(0, 1000).Count(_ => ClosingMargin.Of(Minutes(20, _ => 2 + (8 * (random.NextDouble() - 0.5)), everyS: 30), NowS) is not null);
        Assert.InRange(spoken, 0, 20);
    }

    [Fact]
    public void ADoorThatOpenedOnce_IsNoTrend() =>
        Assert.Null(ClosingMargin.Of(Minutes(20, backS => backS is > 500 and < 620 ? 1.0 : 2.5), NowS));

    [Theory]
    [InlineData(13)]
    [InlineData(1)]
    public void Points_OverTooShortATime_GiveNothing(double minutes) =>
        Assert.Null(ClosingMargin.Of(Minutes(minutes, backS => 2.0 + (3.0 * backS / 3600)), NowS));

    [Fact]
    public void Points_ThatEndedLongAgo_GiveNothing() =>
        Assert.Null(ClosingMargin.Of(Minutes(20, backS => 2.0 + (3.0 * backS / 3600)).Where(p => p.AtS < NowS - 300), NowS));

    [Fact]
    public void CompressedDay_OfTheDemo_AnswersInShopTime()
    {
        // The shop runs 135 times faster: its 20 minutes are 8.9 s of the clock, read once a second.
        const double Speed = 135;
        IEnumerable<(double, double)> points = Enumerable.Range(0, 10).Reverse().Select(s => (NowS - s, 2.0 + (3.0 * s * Speed / 3600)));
        ClosingMargin closing = ClosingMargin.Of(points, NowS, ClosingMargin.Window / Speed)!;
        Assert.Equal(40, closing.Left.TotalMinutes, 0.01);
        Assert.Equal(3, closing.FallCPerH, 1e-6);
    }

    [Property]
    public bool Answer_WheneverGiven_IsAheadAndWithinItsRange(short[] steps, byte start)
    {
        double marginC = start / 20.0;
        List<(double, double)> points = [];
        for (int i = 0; i < Math.Min(steps.Length, 40); i++)
        {
            marginC += steps[i] / 60_000.0;
            points.Add((NowS - 1200 + (i * 30), marginC));
        }

        return ClosingMargin.Of(points, NowS) is not { } closing
            || (closing.Left > TimeSpan.Zero && closing.Left <= ClosingMargin.Farthest && closing.Least <= closing.Left && closing.Left <= closing.Most && closing.FallCPerH > 0);
    }

    private static IEnumerable<(double AtS, double MarginC)> Minutes(double minutes, Func<double, double> marginOfBackS, double everyS = 1)
    {
        for (double backS = minutes * 60; backS >= 0; backS -= everyS)
        {
            yield return (NowS - backS, marginOfBackS(backS));
        }
    }
}
