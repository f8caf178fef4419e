using System.Collections.Immutable;
using BoothWatch.Air;
using BoothWatch.Outlook;
using BoothWatch.Readings;
using BoothWatch.Service.Outlook;
using BoothWatch.Service.Tests.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Outlook;

public sealed class BoothHeadingTests
{
    private static readonly MoistAir Booth = MoistAir.FromDewPoint(22, 10, 101_325);
    private static readonly MoistAir Before = MoistAir.FromDewPoint(16, 9.5, 101_325);
    private static readonly MoistAir Rain = MoistAir.FromDewPoint(17, 15, 101_325);
    private static readonly RoomModel Room = new(6, 4, 8, 0.0003, 8);

    [Fact]
    public void AStepOutdoors_IsSeenBeforeTheBoothFeelsIt()
    {
        (AirStep? step, IReadOnlyList<OutlookAir> start) = BoothHeading.Of(Now(Rain, fanOn: true), LastHour(Rain), Room);
        Assert.True(step!.AtIntake);
        Assert.Equal(Rain.HumidityRatio - Before.HumidityRatio, step.ByRatio, 0.0001);

        // In the end the booth has the humidity ratio of the rain and the usual excess; ten minutes on, 1 - exp(-1) of the way by humidity ratio.
        double end = MoistAir.FromHumidityRatio(22, Rain.HumidityRatio + 0.0003, 101_325).DewPointC;
        Assert.Equal(end, step.HeadingForDewPointC!.Value, 0.05);
        Assert.Equal(10, start[0].DewPointC, 0.05);
        double ten = MoistAir.FromHumidityRatio(22, Booth.HumidityRatio + ((1 - Math.Exp(-1)) * (Rain.HumidityRatio + 0.0003 - Booth.HumidityRatio)), 101_325).DewPointC;
        Assert.Equal(ten, start[1].DewPointC, 0.05);
        Assert.All(start, air => Assert.True(air.DewPointC <= air.TemperatureC));
    }

    [Theory]
    [InlineData(false, true, true)]
    [InlineData(true, false, true)]
    [InlineData(true, true, false)]
    public void WithoutFan_Room_OrIntake_TheStartIsTheBoothNow(bool fanOn, bool hasRoom, bool hasIntake)
    {
        (AirStep? step, IReadOnlyList<OutlookAir> start) = BoothHeading.Of(Now(hasIntake ? Rain : null, fanOn), LastHour(Rain), hasRoom ? Room : null);
        Assert.Equal((true, (double?)null), (step!.AtIntake, step.HeadingForDewPointC));
        Assert.Equal([new OutlookAir(Booth.TemperatureC, Booth.DewPointC)], start);
    }

    [Fact]
    public void AStepInABoothWithoutIntakeSensor_IsSaid()
    {
        (AirStep? step, IReadOnlyList<OutlookAir> start) = BoothHeading.Of(Now(null, fanOn: true), [.. LastHour(Rain).Select(minute => minute with { IntakeRatio = null })], Room);
        Assert.False(step!.AtIntake);
        Assert.Single(start);
    }

    [Fact]
    public void SteadyAir_IsNoStep() => Assert.Null(BoothHeading.Of(Now(Before, fanOn: true), LastHour(Before), Room).Step);

    private static Assessment Now(MoistAir? intake, bool fanOn)
    {
        List<Reading> readings = [new(Quantity.ExhaustProof, "exhaust", fanOn ? 1 : 0, 0, TimeSpan.Zero, ReadingQuality.Good, null)];
        if (intake is not null)
        {
            readings.Add(new(Quantity.IntakeTemperature, "intake", intake.TemperatureC, 0.2, TimeSpan.Zero, ReadingQuality.Good, null));
            readings.Add(new(Quantity.IntakeHumidity, "intake", intake.RelativeHumidityPct, 2, TimeSpan.Zero, ReadingQuality.Good, null));
        }

        return Samples.Spray with
        {
            Air = new AirFindings(22, Booth.RelativeHumidityPct, 101_325, Booth.DewPointC, 0.4, Booth.HumidityRatio, 21),
            Snapshot = new BoothSnapshot(Samples.Noon, true, readings.ToDictionary(reading => reading.Quantity).ToImmutableDictionary()),
        };
    }

    // Forty minutes as before, and then ten of another air outdoors; without an intake sensor the booth itself steps.
    private static RoomMinute[] LastHour(MoistAir later) =>
    [
        .. Enumerable.Range(0, 50).Select(i => i < 40
            ? new RoomMinute(i / 60.0, Booth.HumidityRatio, Before.HumidityRatio, true)
            : new RoomMinute(i / 60.0, Booth.HumidityRatio + (later.HumidityRatio - Before.HumidityRatio), later.HumidityRatio, true)),
    ];
}
