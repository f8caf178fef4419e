using BoothWatch.Alerts;
using BoothWatch.Jobs;
using BoothWatch.Tests.Jobs;
using BoothWatch.Tests.Verdicts;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Alerts;

/// <summary>A margin that falls on a straight line, whose end is reckoned by head. Wanted margin of the booth: 1.0 + 2 x 0.5 = 2.0 °C.</summary>
public class MarginClosingTests
{
    [Fact]
    public void Margin_ThatFallsFast_IsToldWithTheMinutesThatAreLeft()
    {
        // 0.2 °C a minute from 6 °C: the wanted 2 °C are reached after 20 min, and 15 min are left after 5 min; the line is known by then.
        AlertBooth booth = new();
        booth.Run(345, second => booth.MarginC = 6 - (0.2 * second / 60));

        EpisodeChange told = Assert.Single(booth.All, change => change.Step == EpisodeStep.Told);
        Assert.Equal(AlertKind.MarginClosing, told.Episode.Kind);
        Assert.Equal("Margin closing: about 14 min to slow down", told.Title);
        Assert.Contains("falling 2.0 °C in ten minutes", told.Finding, StringComparison.Ordinal);
    }

    [Fact]
    public void Margin_ThatFallsSlowly_IsNotTold()
    {
        // 0.05 °C a minute from 6 °C: 80 min.
        AlertBooth booth = new();
        booth.Run(1200, second => booth.MarginC = 6 - (0.05 * second / 60));

        Assert.Empty(booth.All);
    }

    [Fact]
    public void Margin_ThatStopsFalling_IsClearedOnce()
    {
        AlertBooth booth = new();
        booth.Run(420, second => booth.MarginC = 6 - (0.2 * second / 60));
        booth.Run(1200);

        Assert.Equal((1, 1), (booth.Told(AlertKind.MarginClosing), booth.Cleared(AlertKind.MarginClosing)));
    }

    [Fact]
    public void Margin_OnceTheVerdictIsWorse_LapsesWithoutAnAllClear()
    {
        AlertBooth booth = new();
        booth.Run(420, second => booth.MarginC = 6 - (0.2 * second / 60));
        booth.Verdict = Verdict.SlowDown;
        booth.Run(2);

        Assert.Contains(booth.All, change => change is { Step: EpisodeStep.Lapsed, Episode.Kind: AlertKind.MarginClosing });
        Assert.Equal((1, 0), (booth.Told(AlertKind.MarginClosing), booth.Cleared(AlertKind.MarginClosing)));
        Assert.Equal(1, booth.Told(AlertKind.VerdictWorse));
    }

    [Fact]
    public void Margin_WithNothingMixed_IsThatOfTheHighestLevel()
    {
        // The margin of the recommended level saws up and down while that of the highest level stands.
        AlertBooth booth = new() { LoadedPct = null };
        booth.Run(1200, second => booth.MarginC = 3 - (second / 60 % 5 * 0.2));

        Assert.Empty(booth.All);
    }

    [Fact]
    public void Margin_OfAnotherCup_BeginsAnew()
    {
        AlertBooth booth = new();
        booth.Run(400);
        booth.LoadedPct = 0;
        booth.MarginC = 3;
        booth.Run(400);

        Assert.Empty(booth.All);
    }

    [Fact]
    public void Margin_WithALimitOfTheShop_RunsToWhereItsCoatsBlush()
    {
        // 0.1 °C a minute from 3 °C under slow down: after 330 s it stands at 2.45, and the shop's 1.5 are 9.5 min away; zero would be 24.5.
        AlertBooth booth = new() { Verdict = Verdict.SlowDown };
        booth.Jobs = [Spraying(booth.Time)];
        booth.Limits = booth.Limits with { Policy = GoodBooth.RoundLimits.WithShopLimit(2.5, 1.5, 40) };
        booth.Run(345, second => booth.MarginC = 3 - (0.1 * second / 60));

        EpisodeChange told = Assert.Single(booth.All, change => change.Step == EpisodeStep.Told);
        Assert.Equal("Margin closing: about 9 min to blush", told.Title);
    }

    [Fact]
    public void Margin_ThatOnlySwings_IsNotTold()
    {
        // A heater that switches swings the margin by 0.3 °C in seven minutes. Ten minutes of it give a line that falls by up to 0.05 °C a
        // minute, which would leave 8 min; its error is as large, because the points beside it resemble each other.
        AlertBooth booth = new();
        booth.Run(4 * 3600, second => booth.MarginC = 2.4 + (0.3 * Math.Sin(2 * Math.PI * second / 420)));

        Assert.Empty(booth.All);
    }

    private static WatchedJob Spraying(DateTimeOffset start) =>
        new(Sample.Job(new CoatMarked(1, Sample.Coat(0) with { Start = start }, null)), [], null);
}
