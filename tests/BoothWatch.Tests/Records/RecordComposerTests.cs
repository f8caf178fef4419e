using BoothWatch.Jobs;
using BoothWatch.Records;
using BoothWatch.Tests.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Records;

/// <summary>What a record says of a job: overrides, corrections beside their originals, coats taken back, and what is not known.</summary>
public sealed class RecordComposerTests
{
    private static readonly RecordSensor Sensor = new("boothAir", "SHT4x at 0x44 on bus 1", [], false, null);

    [Theory]
    [InlineData(Verdict.SlowDown, "begun while the verdict was slow down")]
    [InlineData(Verdict.Wait, "begun while the verdict was wait")]
    public void Coat_BegunOnAnotherVerdictThanSpray_IsAnOverride(Verdict verdict, string finding)
    {
        CoatOverride found = Record(new CoatMarked(1, Sample.Coat(0), Moment(verdict))).Coats.Single().Override!;
        Assert.Equal((verdict, finding), (found.Verdict, found.Finding));
        Assert.Equal(["the reason"], found.Reasons);
    }

    [Fact]
    public void Coat_BegunOnSpray_IsNone() => Assert.Null(Record(new CoatMarked(1, Sample.Coat(0), Moment(Verdict.Spray))).Coats.Single().Override);

    [Fact]
    public void Coat_WithoutKnownAir_HasNoVerdictBehindIt()
    {
        EnvironmentRecord record = Record(new CoatMarked(1, Sample.Coat(0), null));
        Assert.Null(record.Coats.Single().Override!.Verdict);
        Assert.Contains("no verdict is on record", record.Coats.Single().Override!.Finding, StringComparison.Ordinal);
        Assert.Contains(record.Uncertainty, words => words.StartsWith("Coat 1: the air at the start is not on record", StringComparison.Ordinal));
    }

    [Fact]
    public void Correction_OfTheStart_TakesNoOverrideAway()
    {
        CoatOverride found = Record(
            new CoatMarked(1, Sample.Coat(60), Moment(Verdict.Wait)),
            new CoatCorrected(1, Sample.Coat(0), Moment(Verdict.Spray), "began earlier")).Coats.Single().Override!;
        Assert.Equal(Verdict.Wait, found.Verdict);
        Assert.Equal("marked while the verdict was wait; for its start as corrected it was spray", found.Finding);
    }

    [Fact]
    public void Correction_StandsBesideTheOriginal()
    {
        EnvironmentRecord record = Record(
            new CoatMarked(1, Sample.Coat(0, retarderPct: 2), Moment(Verdict.Spray)),
            new CoatCorrected(1, Sample.Coat(0, retarderPct: 5), Moment(Verdict.Spray), "read the cup again"),
            new JobCorrected(new JobDetails("oak stool", "satin", "touch-up"), "wrong piece"));
        RecordCoat coat = record.Coats.Single();
        Assert.Equal((5, 2), (coat.Details.Mix.RetarderPct, coat.Original!.Mix.RetarderPct));
        Assert.Equal("read the cup again", coat.Corrections.Single().Why);
        Assert.NotNull(coat.OriginalAtStart);
        Assert.Equal(("oak stool", "side table"), (record.Job.Details.Piece, record.Job.Original!.Piece));
        Assert.Equal("wrong piece", record.Job.Corrections.Single().Why);
    }

    [Fact]
    public void Coat_TakenBack_IsNotAmongTheCoatsAndNotHidden()
    {
        JobChange[] changes = [new CoatMarked(1, Sample.Coat(0), Moment(Verdict.Spray)), new CoatMarked(2, Sample.Coat(30), Moment(Verdict.Wait)), new TakenBack(3)];
        EnvironmentRecord record = Record(changes);
        Assert.Equal([1L], record.Coats.Select(coat => coat.Id));
        Assert.Equal([2L], record.TakenBack.Select(coat => coat.Id));
        Assert.Empty(Record([.. changes, new TakenBack(4)]).TakenBack);
    }

    [Fact]
    public void Figures_AreRoundedOnceAndNeverMinusZero()
    {
        CoatMoment moment = Record(new CoatMarked(1, Sample.Coat(0), Moment(Verdict.Spray) with { DewPointC = 9.3456, BlushMarginC = -0.004, PressurePa = 101_324.6 })).Coats.Single().AtStart!;
        Assert.Equal((9.35, 101_325), (moment.DewPointC, moment.PressurePa));
        Assert.False(double.IsNegative(moment.BlushMarginC!.Value));
    }

    [Theory]
    [InlineData(0.4, 0.9, true)]
    [InlineData(-1.4, 0.9, true)]
    [InlineData(1.6, 0.9, false)]
    public void Margin_ThatItsUncertaintyReachesAcrossZero_IsSaid(double margin, double uncertainty, bool said)
    {
        EnvironmentRecord record = Record(new CoatMarked(1, Sample.Coat(0), Moment(Verdict.Spray) with { BlushMarginC = margin, MarginUncertaintyC = uncertainty }));
        Assert.Equal(said, record.Uncertainty.Any(words => words.Contains("other side of zero", StringComparison.Ordinal)));
    }

    [Fact]
    public void Coat_WrittenDownLater_IsSaid()
    {
        // The entries of the sample are a minute apart from 8:00; the coat began an hour before.
        EnvironmentRecord record = Record(new CoatMarked(1, Sample.Coat(-60, stopMinute: -50), Moment(Verdict.Spray)));
        Assert.Contains(record.Uncertainty, words => words.StartsWith("Coat 1: written down later than sprayed", StringComparison.Ordinal));
    }

    [Fact]
    public void Sensors_WithoutACheck_AreSaid()
    {
        Assert.Contains(Record().Uncertainty, words => words.StartsWith("No check of a sensor is on record", StringComparison.Ordinal));
        Assert.Contains(EnvironmentRecord.CautionText, Record().Caution, StringComparison.Ordinal);
    }

    private static EnvironmentRecord Record(params JobChange[] changes) => RecordComposer.Compose(new RecordInputs
    {
        Job = Sample.Job(changes),
        Shop = "Harbour Lane",
        Booth = "corner",
        IsDemo = false,
        AirOf = coat => new CoatAir { From = coat.Details.Start, To = coat.Details.Start, Count = 0, FromRows = false },
        ReasonsAt = _ => ["the reason"],
        Air = [],
        Sensors = [Sensor],
    });

    private static CoatMoment Moment(Verdict verdict) => new()
    {
        Time = Sample.Day,
        AirTemperatureC = 21.5,
        RelativeHumidityPct = 61,
        PressurePa = 101_325,
        DewPointC = 13.7,
        PieceTemperatureC = 20.5,
        Verdict = verdict,
        BlushMarginC = 4,
        MarginUncertaintyC = 0.9,
        RecommendedRetarderPct = 6,
    };
}
