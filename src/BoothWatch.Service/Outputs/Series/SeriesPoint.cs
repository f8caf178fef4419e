using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>One point of the history: a single row, or the summary of a step. Values that were not usable are null.</summary>
/// <param name="Time">Time of the row, or start of the step, UTC.</param>
/// <param name="TemperatureC">Booth temperature, mean of the step, °C.</param>
/// <param name="RelativeHumidityPct">Booth humidity, mean of the step, %.</param>
/// <param name="DewPointC">Dew point, mean of the step, °C.</param>
/// <param name="PieceTemperatureC">Temperature of the piece, mean of the step, °C.</param>
/// <param name="BlushMarginC">Blush margin, least of the step, °C.</param>
/// <param name="LowestFilmTemperatureC">Lowest film temperature, least of the step, °C.</param>
/// <param name="Verdict">The worst verdict of the step.</param>
public sealed record SeriesPoint(
    DateTimeOffset Time,
    double? TemperatureC,
    double? RelativeHumidityPct,
    double? DewPointC,
    double? PieceTemperatureC,
    double? BlushMarginC,
    double? LowestFilmTemperatureC,
    Verdict Verdict)
{
    /// <summary>Booth humidity, least of the step, %.</summary>
    public double? LeastRelativeHumidityPct { get; init; }

    /// <summary>Booth humidity, most of the step, %.</summary>
    public double? MostRelativeHumidityPct { get; init; }
}
