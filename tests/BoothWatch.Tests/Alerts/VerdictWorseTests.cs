using BoothWatch.Alerts;
using BoothWatch.Jobs;
using BoothWatch.Readings;
using BoothWatch.Tests.Jobs;
using BoothWatch.Tests.Verdicts;
using BoothWatch.Verdicts;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Alerts;

/// <summary>What a session is and how many messages it gets: own choices, docs/alerts.md.</summary>
public class VerdictWorseTests
{
    [Fact]
    public void Verdict_ThatGetsWorseWhileSprayingGoesOn_IsToldAtOnceAndClearedOnceItHasHeld()
    {
        AlertBooth booth = new();
        booth.Run(60);

        booth.Verdict = Verdict.Wait;
        IReadOnlyList<EpisodeChange> first = booth.Run(1);
        Assert.Equal([EpisodeStep.Began, EpisodeStep.Told], first.Select(change => change.Step));
        Assert.Equal(("Wait", AlertLevel.Urgent), (first[1].Title, first[1].Episode.Level));
        Assert.Contains("17.8 °C", first[1].Finding, StringComparison.Ordinal);
        Assert.Empty(booth.Run(300));

        booth.Verdict = Verdict.Spray;
        Assert.Empty(booth.Run(120));
        EpisodeChange clear = Assert.Single(booth.Run(1));
        Assert.Equal((EpisodeStep.Cleared, "Spray again"), (clear.Step, clear.Title));
    }

    [Fact]
    public void Verdict_ThatGetsWorseWithoutASession_IsNotTold()
    {
        AlertBooth booth = new() { Exhaust = false };
        booth.Run(60);
        booth.Verdict = Verdict.Wait;

        Assert.Empty(booth.Run(3600));
    }

    [Fact]
    public void Verdict_ThatGetsWorseAfterTheSession_IsNotTold()
    {
        AlertBooth booth = new();
        booth.Run(60);
        booth.Exhaust = false;
        booth.Run((30 * 60) + 1);
        booth.Verdict = Verdict.Wait;

        Assert.Empty(booth.Run(600));
    }

    [Fact]
    public void Verdict_OfACoatThatWasBegunUnderWait_IsNotTold()
    {
        AlertBooth booth = new() { Exhaust = false, Verdict = Verdict.Wait };
        booth.Jobs = [Spraying(booth.Time)];

        Assert.Empty(booth.Run(600));
    }

    [Fact]
    public void Verdict_OfAMarkedCoat_NeedsNoExhaustProof()
    {
        AlertBooth booth = new() { Exhaust = false, Verdict = Verdict.SlowDown };
        booth.Jobs = [Spraying(booth.Time)];
        booth.Run(10);
        booth.Verdict = Verdict.Wait;

        Assert.Contains(booth.Run(1), change => change is { Step: EpisodeStep.Told, Episode.Kind: AlertKind.VerdictWorse });
    }

    [Fact]
    public void Verdict_FromSlowDownToWait_IsAnEpisodeOfItsOwnThatReplacesTheFirst()
    {
        AlertBooth booth = new();
        booth.Run(60);
        booth.Verdict = Verdict.SlowDown;
        booth.Run(60);
        booth.Verdict = Verdict.Wait;

        Assert.Equal([EpisodeStep.Replaced, EpisodeStep.Began, EpisodeStep.Told], booth.Run(60).Select(change => change.Step));
        booth.Verdict = Verdict.SlowDown;
        Assert.Empty(booth.Run(300));
        booth.Verdict = Verdict.Spray;
        booth.Run(130);
        Assert.Equal((2, 1), (booth.Told(AlertKind.VerdictWorse), booth.Cleared(AlertKind.VerdictWorse)));
    }

    [Fact]
    public void Verdict_ThatGetsWorseBecauseASensorIsLost_IsToldAsThatAlone()
    {
        AlertBooth booth = new();
        booth.Run(60);
        (booth.Verdict, booth.Rule) = (Verdict.Wait, "booth-air-unknown");
        booth.Instead = [GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.NoReading)];
        booth.Run(60);
        booth.Instead = [];
        booth.Rule = "dwell";
        booth.Run(30);

        Assert.Equal((0, 1), (booth.Told(AlertKind.VerdictWorse), booth.Told(AlertKind.SensorsLost)));
    }

    /// <summary>The bound of the hysteresis: trouble that never stays away for the time to clear is one message, however it flaps.</summary>
    [Property(MaxTest = 40)]
    public Property Verdict_ThatFlaps_IsOneMessage() => Prop.ForAll(
        Gen.Two(Gen.Choose(1, 119)).ListOf(12).ToArbitrary(),
        stretches =>
        {
            AlertBooth booth = new();
            booth.Run(5);
            foreach ((int bad, int well) in stretches)
            {
                booth.Verdict = Verdict.SlowDown;
                booth.Run(bad);
                booth.Verdict = Verdict.Spray;
                booth.Run(well);
            }

            return booth.Told(AlertKind.VerdictWorse) == 1 && booth.Cleared(AlertKind.VerdictWorse) == 0;
        });

    [Fact]
    public void Verdict_ThatKeepsComingBackSlowly_MustStayAwayLongerEachTime()
    {
        AlertBooth booth = new();
        booth.Run(5);
        for (int time = 0; time < 20; time++)
        {
            booth.Verdict = Verdict.SlowDown;
            booth.Run(30);
            booth.Verdict = Verdict.Spray;
            booth.Run(150);
        }

        // An hour of it: without the doubling it would be 20 messages.
        Assert.InRange(booth.Told(AlertKind.VerdictWorse), 2, 3);
    }

    private static WatchedJob Spraying(DateTimeOffset start) =>
        new(Sample.Job(new CoatMarked(1, Sample.Coat(0) with { Start = start }, null)), [], null);
}
