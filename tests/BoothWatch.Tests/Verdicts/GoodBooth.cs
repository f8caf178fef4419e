using System.Collections.Immutable;
using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Verdicts;

/// <summary>A booth in which everything is fine, to spoil one thing at a time.</summary>
internal static class GoodBooth
{
    public static readonly DateTimeOffset Noon = new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);

    public static Reading Good(Quantity quantity, double value, double uncertainty = 0.1) =>
        new(quantity, SensorOf(quantity), value, uncertainty, TimeSpan.FromSeconds(1), ReadingQuality.Good, null);

    public static Reading Bad(Quantity quantity, ReadingQuality quality, string? cause = "no acknowledge") =>
        new(quantity, SensorOf(quantity), null, 0.1, TimeSpan.FromSeconds(1), quality, cause);

    public static BoothSnapshot Snapshot(params ReadOnlySpan<Reading> instead)
    {
        Dictionary<Quantity, Reading> readings = new Reading[]
        {
            Good(Quantity.BoothTemperature, 22),
            Good(Quantity.BoothHumidity, 50, 1),
            Good(Quantity.StationPressure, 101_325, 50),
            Good(Quantity.PieceTemperature, 21.5, 0.3),
            Good(Quantity.ExhaustProof, 1, 0),
            Good(Quantity.FilterPressureDrop, 40, 1),
        }.ToDictionary(reading => reading.Quantity);
        foreach (Reading reading in instead)
        {
            readings[reading.Quantity] = reading;
        }

        return new BoothSnapshot(Noon, ClockProven: true, readings.ToImmutableDictionary());
    }

    public static BoothSnapshot Without(this BoothSnapshot snapshot, Quantity quantity) =>
        snapshot with { Readings = snapshot.Readings.Remove(quantity) };

    public static AirFindings Air(double temperatureC = 22, double humidityPct = 50, double dewPointC = 11.1, double? pieceC = 21.5) =>
        new(temperatureC, humidityPct, 101_325, dewPointC, 0.3, 0.0082, pieceC);

    /// <summary>Round limits to reckon with by head, whatever the defaults are. Margin wanted: 1.0 + 2 x 0.5 = 2.0 °C.</summary>
    public static readonly VerdictPolicy RoundLimits = new() { RequiredMarginC = 1.0, CoverageFactor = 2.0 };

    public static FilmFindings Film(
        double marginC = 4,
        double? loadedPct = 0,
        double? recommendedPct = 0,
        double? usedPct = null,
        double marginAtHighestC = 9,
        double marginUncertaintyC = 0.5) => new()
        {
            Coat = "clear",
            Mix = "clear coat, 1 part lacquer to 1 part thinner",
            CupMl = 200,
            LoadedRetarderPct = loadedPct,
            RetarderPct = usedPct ?? loadedPct ?? recommendedPct ?? 15,
            TimeToSetS = 240,
            LowestFilmTemperatureC = 14,
            WaterAtSetGPerM2 = 0,
            CriticalHumidityPct = 70,
            CriticalDewPointC = 16,
            BlushMarginC = marginC,
            MarginUncertaintyC = marginUncertaintyC,
            RecommendedRetarderPct = recommendedPct,
            MarginAtHighestRetarderC = marginAtHighestC,
            SolventTrappingRisk = false,
        };

    public static Evidence Evidence(
        BoothSnapshot? snapshot = null, AirFindings? air = null, FilmFindings? film = null, VerdictPolicy? policy = null) => new()
        {
            Snapshot = snapshot ?? Snapshot(),
            Policy = policy ?? RoundLimits,
            Air = air ?? Air(),
            Film = film ?? Film(),
        };

    private static string SensorOf(Quantity quantity) => quantity switch
    {
        Quantity.BoothTemperature or Quantity.BoothHumidity or Quantity.StationPressure => "boothAir",
        Quantity.PieceTemperature => "piece",
        Quantity.ExhaustProof => "exhaust",
        Quantity.FilterPressureDrop => "filter",
        _ => "intakeAir",
    };
}
