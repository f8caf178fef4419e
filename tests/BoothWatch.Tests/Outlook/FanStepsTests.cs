using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

public class FanStepsTests
{
    [Fact]
    public void EachSwitchingOn_AfterAStand_IsAStep_UpToTheNextOff()
    {
        RoomMinute[] minutes = [.. Enumerable.Range(0, 200).Select(i => Minute(i, fanOn: i is >= 20 and < 60 or >= 100))];
        IReadOnlyList<IReadOnlyList<RoomPoint>> steps = FanSteps.Of(minutes);
        Assert.Equal([40, FanSteps.MostMinutes], steps.Select(step => step.Count));
        Assert.Equal(20 / 60.0, steps[0][0].AtH, 9);
    }

    [Fact]
    public void AFanThatAlwaysRan_HasNoStep() => Assert.Empty(FanSteps.Of([.. Enumerable.Range(0, 200).Select(i => Minute(i, fanOn: true))]));

    [Fact]
    public void AShortStand_IsNoStep() => Assert.Empty(FanSteps.Of([.. Enumerable.Range(0, 60).Select(i => Minute(i, fanOn: i is < 10 or > 13))]));

    [Fact]
    public void ASilence_HidesWhenTheFanCameOn() =>
        Assert.Empty(FanSteps.Of([.. Enumerable.Range(0, 60).Where(i => i is < 18 or > 24).Select(i => Minute(i, fanOn: i >= 20))]));

    [Fact]
    public void AnUnknownIntake_EndsTheMinutes() =>
        Assert.Equal([15], FanSteps.Of([.. Enumerable.Range(0, 60).Select(i => Minute(i, fanOn: i >= 20) with { IntakeRatio = i >= 35 ? null : 0.008 })]).Select(step => step.Count));

    private static RoomMinute Minute(int at, bool fanOn) => new(at / 60.0, 0.01, 0.008, fanOn);
}
