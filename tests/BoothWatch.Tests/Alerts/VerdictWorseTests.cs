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

    [Theory]
    [InlineData("exhaust-not-proven", Verdict.Wait)]
    [InlineData("filter-loaded", Verdict.SlowDown)]
    public void Verdict_OfWhatWasMeasured_IsToldAtOnceWhateverElseIsLost(string rule, Verdict verdict)
    {
        // The barometer dies within the session and is told; then the fan is off, or the filter truly loaded.
        AlertBooth booth = new();
        booth.Run(60);
        booth.Instead = [GoodBooth.Bad(Quantity.StationPressure, ReadingQuality.Stale)];
        booth.Run(60);
        Assert.Equal((0, 1), (booth.Told(AlertKind.VerdictWorse), booth.Told(AlertKind.SensorsLost)));
        (booth.Verdict, booth.Rule, booth.Exhaust) = (verdict, rule, rule != "exhaust-not-proven");

        Assert.Contains(booth.Run(1), change => change is { Step: EpisodeStep.Told, Episode.Kind: AlertKind.VerdictWorse });
    }

    [Fact]
    public void Verdict_OfASensorThatIsLostWhileAnotherOneIsToldAlready_IsTold()
    {
        AlertBooth booth = new();
        booth.Run(60);
        Reading barometer = GoodBooth.Bad(Quantity.StationPressure, ReadingQuality.Stale);
        booth.Instead = [barometer];
        booth.Run(60);
        booth.Instead = [barometer, GoodBooth.Bad(Quantity.PieceTemperature, ReadingQuality.Stale)];
        (booth.Verdict, booth.Rule) = (Verdict.Wait, "piece-unknown");

        // The message of the barometer says nothing of the piece. Ten seconds as for any sensor.
        Assert.Empty(booth.Run(10));
        Assert.Contains(booth.Run(1), change => change is { Step: EpisodeStep.Told, Episode: { Kind: AlertKind.VerdictWorse, Level: AlertLevel.Urgent } });
    }

    [Fact]
    public void Verdict_OfASensorThatIsLostWhileAnotherOneHasBeenDeadForDays_IsTold()
    {
        AlertBooth booth = new() { Exhaust = false };
        booth.Run(30);
        Reading barometer = GoodBooth.Bad(Quantity.StationPressure, ReadingQuality.Stale);
        booth.Instead = [barometer];
        booth.Run(3600);
        Assert.Equal(1, booth.Told(AlertKind.SensorsLost));
        booth.Exhaust = true;
        booth.Run(60);
        booth.Instead = [barometer, GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.NoReading)];
        (booth.Verdict, booth.Rule) = (Verdict.Wait, "booth-air-unknown");
        booth.Run(60);

        Assert.Equal((1, 1), (booth.Told(AlertKind.VerdictWorse), booth.Told(AlertKind.SensorsLost)));
    }

    [Fact]
    public void Verdict_OfASensorWhoseLossWasToldBeforeTheSession_IsToldWhenItIsLostAgain()
    {
        AlertBooth booth = new() { Exhaust = false };
        booth.Run(30);
        Reading piece = GoodBooth.Bad(Quantity.PieceTemperature, ReadingQuality.Stale);
        (booth.Verdict, booth.Rule, booth.Instead) = (Verdict.Wait, "piece-unknown", [piece]);
        booth.Run(3600);

        // It answers for a minute, too short to end the episode, and spraying begins.
        (booth.Verdict, booth.Exhaust, booth.Instead) = (Verdict.Spray, true, []);
        booth.Run(60);
        (booth.Verdict, booth.Instead) = (Verdict.Wait, [piece]);
        booth.Run(60);

        Assert.Equal((1, 1), (booth.Told(AlertKind.VerdictWorse), booth.Told(AlertKind.SensorsLost)));
    }

    [Theory]
    [InlineData(true, 1, 0)]
    [InlineData(false, 0, 0)]
    public void Verdict_OfASensorLostInQuietHours_IsToldWhereTheVerdictBreaksThrough(bool breaksThrough, int verdicts, int sensors)
    {
        AlertBooth booth = NightBooth(breaksThrough);
        booth.Run(60);
        (booth.Verdict, booth.Rule, booth.Instead) = (Verdict.Wait, "booth-air-unknown", [GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.NoReading)]);
        booth.Run(60);
        Assert.Equal((verdicts, sensors), (booth.Told(AlertKind.VerdictWorse), booth.Told(AlertKind.SensorsLost)));

        // At the end of the quiet hours what is still the matter is told, as lost sensors.
        booth.Run(3600);
        Assert.Equal((verdicts, 1), (booth.Told(AlertKind.VerdictWorse), booth.Told(AlertKind.SensorsLost)));
    }

    [Fact]
    public void Verdict_OfASensorThatWasToldBeforeTheQuietHours_IsNotToldOnceMoreWhenTheyBegin()
    {
        AlertBooth booth = NightBooth(breaksThrough: true);
        booth.Limits = booth.Limits with { Quiet = new QuietHours(new TimeOnly(12, 5), new TimeOnly(13, 0)) };
        booth.Run(60);
        (booth.Verdict, booth.Rule, booth.Instead) = (Verdict.Wait, "booth-air-unknown", [GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.NoReading)]);
        booth.Run(900);

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

    // The booth's clock begins at noon.
    private static AlertBooth NightBooth(bool breaksThrough)
    {
        AlertBooth booth = new();
        booth.Limits = booth.Limits with
        {
            Quiet = new QuietHours(new TimeOnly(11, 0), new TimeOnly(12, 30)),
            BreakThrough = breaksThrough ? [AlertKind.VerdictWorse] : [],
        };
        return booth;
    }

    private static WatchedJob Spraying(DateTimeOffset start) =>
        new(Sample.Job(new CoatMarked(1, Sample.Coat(0) with { Start = start }, null)), [], null);
}
