using System.Collections.Immutable;
using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Outputs;

/// <summary>Assessments with every figure set, for tests of what outputs do with them. The figures are plausible, not computed.</summary>
internal static class TestAssessment
{
    public static readonly DateTimeOffset Start = new(2026, 9, 7, 8, 0, 0, TimeSpan.Zero);

    public static Assessment At(
        DateTimeOffset time,
        double temperatureC = 21.5,
        double humidityPct = 54.25,
        double? pieceC = 20.75,
        double? marginC = 6.125,
        Verdict verdict = Verdict.Spray,
        bool clockProven = true,
        ReadingQuality temperatureQuality = ReadingQuality.Good)
    {
        var readings = ImmutableDictionary.CreateRange(new KeyValuePair<Quantity, Reading>[]
        {
            new(Quantity.BoothTemperature, Of(Quantity.BoothTemperature, temperatureC, temperatureQuality)),
            new(Quantity.BoothHumidity, Of(Quantity.BoothHumidity, humidityPct)),
            new(Quantity.IntakeTemperature, Of(Quantity.IntakeTemperature, 18.125)),
            new(Quantity.IntakeHumidity, Of(Quantity.IntakeHumidity, 61.5)),
            new(Quantity.StationPressure, Of(Quantity.StationPressure, 101_200.5)),
            new(Quantity.ExhaustProof, Of(Quantity.ExhaustProof, 1)),
        });
        if (pieceC is { } piece)
        {
            readings = readings.Add(Quantity.PieceTemperature, Of(Quantity.PieceTemperature, piece));
        }

        return new Assessment
        {
            Time = time,
            Snapshot = new BoothSnapshot(time, clockProven, readings),
            Air = new AirFindings(temperatureC, humidityPct, 101_200.5, 11.875, 0.4, 0.0086, pieceC),
            Film = marginC is { } margin ? Film(margin) : null,
            Warming = pieceC is { } surface
                ? new PieceWarming { State = WarmingState.Warm, TargetC = 16.5, TargetFrom = WarmingTarget.Air, ClearanceC = surface - 11.875, WarmSinceS = 240 }
                : null,
            Verdict = verdict,
            Reasons =
            [
                new Reason("blush-margin", verdict, "dew point 17.8 °C, 0.6 °C over what this mix holds", "raise retarder to 9 % or wait"),
                new Reason("air-temperature", Verdict.Spray, "air 21.5 °C", "none needed"),
            ],
        };
    }

    private static Reading Of(Quantity quantity, double value, ReadingQuality quality = ReadingQuality.Good) =>
        new(quantity, "test", value, 0.1, TimeSpan.Zero, quality, quality == ReadingQuality.Good ? null : "as the test says");

    private static FilmFindings Film(double marginC) => new()
    {
        Coat = "clear",
        Mix = "one part lacquer to one part thinner",
        CupMl = 400,
        LoadedRetarderPct = 5,
        RetarderPct = 5,
        TimeToSetS = 96.5,
        LowestFilmTemperatureC = 14.625,
        WaterAtSetGPerM2 = 0,
        CriticalHumidityPct = 78.5,
        CriticalDewPointC = 18,
        BlushMarginC = marginC,
        MarginUncertaintyC = 0.75,
        RecommendedRetarderPct = 5,
        MarginAtHighestRetarderC = 9.5,
        SolventTrappingRisk = false,
    };
}
