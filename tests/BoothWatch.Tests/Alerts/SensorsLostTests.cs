using BoothWatch.Alerts;
using BoothWatch.Readings;
using BoothWatch.Tests.Verdicts;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Alerts;

public class SensorsLostTests
{
    private static readonly Reading Silent = GoodBooth.Bad(Quantity.PieceTemperature, ReadingQuality.Stale, "no acknowledge for 8 s");

    [Theory]
    [InlineData(false, 60)]
    [InlineData(true, 10)]
    public void Sensor_ThatFallsSilent_IsToldAfterAWhileThatIsShorterInASession(bool session, int afterS)
    {
        AlertBooth booth = new() { Exhaust = session };
        booth.Run(30);
        (booth.Verdict, booth.Rule) = (Verdict.Wait, "piece-unknown");
        booth.Instead = [Silent];

        Assert.Empty(booth.Run(afterS));
        EpisodeChange told = booth.Run(1).Single(change => change.Step == EpisodeStep.Told);
        Assert.Equal(session ? AlertLevel.Urgent : AlertLevel.Warning, told.Episode.Level);
        Assert.Equal("piece temperature (piece): no acknowledge for 8 s", told.Finding);
        booth.Instead = [];
        booth.Verdict = Verdict.Spray;
        booth.Run(130);
        Assert.Equal((1, 1), (booth.Told(AlertKind.SensorsLost), booth.Cleared(AlertKind.SensorsLost)));
    }

    [Fact]
    public void Sensor_ThatNeverAnswered_IsNotLost()
    {
        AlertBooth booth = new() { Exhaust = false, Verdict = Verdict.Wait, Instead = [Silent] };

        Assert.Empty(booth.Run(600));
    }

    [Theory]
    [InlineData(ReadingQuality.BeingChecked, 0)]
    [InlineData(ReadingQuality.FailedCheck, 1)]
    public void Sensor_ThatSomebodyChecks_IsNotLost_OneThatFailedItsCheckIs(ReadingQuality quality, int told)
    {
        AlertBooth booth = new() { Exhaust = false };
        booth.Run(30);
        (booth.Verdict, booth.Rule) = (Verdict.Wait, "booth-air-unknown");
        booth.Instead = [GoodBooth.Bad(Quantity.BoothHumidity, quality, "since 09:10")];
        booth.Run(600);
        Assert.Equal(told, booth.Told(AlertKind.SensorsLost));
    }

    [Fact]
    public void Sensor_ThatFlaps_IsOneMessage()
    {
        AlertBooth booth = new() { Exhaust = false };
        booth.Run(30);
        for (int time = 0; time < 20; time++)
        {
            booth.Instead = [Silent];
            booth.Run(70);
            booth.Instead = [];
            booth.Run(40);
        }

        Assert.Equal((1, 0), (booth.Told(AlertKind.SensorsLost), booth.Cleared(AlertKind.SensorsLost)));
    }

    [Theory]
    [InlineData(false, 0)]
    [InlineData(true, 1)]
    public void PieceTypedByHand_ThatRanOut_IsMissedInASessionOnly(bool session, int messages)
    {
        AlertBooth booth = new() { Exhaust = session };
        booth.Limits = booth.Limits with { TypedByHand = [Quantity.PieceTemperature] };
        booth.Run(30);
        (booth.Verdict, booth.Rule) = (Verdict.Wait, "piece-unknown");
        booth.Instead = [Silent];
        booth.Run(200);

        Assert.Equal(messages, booth.Told(AlertKind.SensorsLost));
    }

    [Fact]
    public void Sensor_ThatIsStillSilentAfterARestart_GetsNoAllClear()
    {
        AlertBooth before = new() { Exhaust = false };
        before.Run(30);
        before.Instead = [Silent];
        before.Run(90);
        Assert.Equal(1, before.Told(AlertKind.SensorsLost));

        AlertBooth after = new() { Exhaust = false, Instead = [Silent], State = AlertState.Resume(before.State.Open.Values) };
        Assert.Empty(after.Run(600));
        after.Instead = [];
        after.Run(130);

        Assert.Equal((0, 1), (after.Told(AlertKind.SensorsLost), after.Cleared(AlertKind.SensorsLost)));
    }

    [Fact]
    public void Sensor_ThatNeverAnswered_HoldsUpNoAllClearOfAnother()
    {
        Reading never = GoodBooth.Bad(Quantity.IntakeHumidity, ReadingQuality.NoReading);
        AlertBooth booth = new() { Exhaust = false, Instead = [never] };
        booth.Run(30);
        booth.Instead = [never, Silent];
        booth.Run(90);
        booth.Instead = [never];
        booth.Run(130);

        Assert.Equal((1, 1), (booth.Told(AlertKind.SensorsLost), booth.Cleared(AlertKind.SensorsLost)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void PieceTypedByHand_ThatRanOutInASession_GetsNoAllClearWhenTheSessionEnds(bool restart)
    {
        AlertBooth booth = new();
        booth.Limits = booth.Limits with { TypedByHand = [Quantity.PieceTemperature] };
        booth.Run(30);
        (booth.Verdict, booth.Rule, booth.Instead) = (Verdict.Wait, "piece-unknown", [Silent]);
        booth.Run(30);
        if (restart)
        {
            booth.State = AlertState.Resume(booth.State.Open.Values);
        }

        booth.Run(40 * 60);

        Assert.Equal((1, 0, 1), (booth.Told(AlertKind.SensorsLost), booth.Cleared(AlertKind.SensorsLost), booth.Lapsed(AlertKind.SensorsLost)));
    }

    [Fact]
    public void PieceTypedByHand_ThatRanOutBefore_HoldsUpNoAllClearOfAnother()
    {
        AlertBooth booth = new() { Exhaust = false };
        booth.Limits = booth.Limits with { TypedByHand = [Quantity.PieceTemperature] };
        booth.Run(30);
        booth.Instead = [Silent, GoodBooth.Bad(Quantity.StationPressure, ReadingQuality.Stale)];
        booth.Run(90);
        booth.Instead = [Silent];
        booth.Run(130);

        Assert.Equal((1, 1), (booth.Told(AlertKind.SensorsLost), booth.Cleared(AlertKind.SensorsLost)));
    }
}
