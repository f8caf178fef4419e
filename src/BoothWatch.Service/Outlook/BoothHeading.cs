using BoothWatch.Air;
using BoothWatch.Outlook;
using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outlook;

/// <summary>Where the air of the booth is heading: after a step outdoors it follows the air that the fan draws in, and the outlook starts from there.</summary>
internal static class BoothHeading
{
    private const double WarmEnoughForAnyRatioC = 60;

    /// <summary>A step of the last hour, and the air of the booth now and, after a step that the room is known to follow, at each later step.</summary>
    /// <param name="assessment">The booth now.</param>
    /// <param name="lastHour">The minutes of the last hour.</param>
    /// <param name="room">How the booth follows its intake; null where that is not learned.</param>
    public static (AirStep? Step, IReadOnlyList<OutlookAir> Start) Of(Assessment assessment, IReadOnlyList<RoomMinute> lastHour, RoomModel? room)
    {
        AirFindings air = assessment.Air!;
        OutlookAir now = new(air.TemperatureC, air.DewPointC);
        double[] intake = [.. lastHour.Select(minute => minute.IntakeRatio).OfType<double>()];
        bool atIntake = intake.Length > StepDetector.LevelMinutes;
        if (StepDetector.Find(atIntake ? intake : [.. lastHour.Select(minute => minute.BoothRatio).OfType<double>()]) is not { } by)
        {
            return (null, [now]);
        }

        BoothSnapshot snapshot = assessment.Snapshot;
        double? intakeNow = RoomQuery.Ratio(Good(snapshot, Quantity.IntakeTemperature), Good(snapshot, Quantity.IntakeHumidity), air.PressurePa);
        if (!atIntake || room is null || intakeNow is not { } ratio || Good(snapshot, Quantity.ExhaustProof) is not >= 0.5)
        {
            return (new AirStep(atIntake, by, null), [now]);
        }

        OutlookAir[] start =
        [
            .. Enumerable.Range(0, OutlookQuestion.MostSteps + 1).Select(step =>
                new OutlookAir(air.TemperatureC, DewPointC(room.RatioAfter(air.HumidityRatio, ratio, step * AirDay.SlotMinutes / 60.0), air))),
        ];
        return (new AirStep(true, by, start[^1].DewPointC), start);
    }

    private static double? Good(BoothSnapshot snapshot, Quantity quantity) => snapshot[quantity] is { IsGood: true } reading ? reading.Value : null;

    private static double DewPointC(double ratio, AirFindings air) =>
        Math.Min(air.TemperatureC, MoistAir.FromHumidityRatio(WarmEnoughForAnyRatioC, Math.Min(ratio, 0.1), air.PressurePa).DewPointC);
}
