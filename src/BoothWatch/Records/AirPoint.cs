using BoothWatch.Verdicts;

namespace BoothWatch.Records;

/// <summary>The air of one step: means of its minutes, and the worst verdict. What was not known is null.</summary>
/// <param name="Time">Start of the step, UTC.</param>
/// <param name="TemperatureC">Air temperature, °C.</param>
/// <param name="RelativeHumidityPct">Relative humidity, %.</param>
/// <param name="DewPointC">Dew point, °C.</param>
/// <param name="PieceTemperatureC">Temperature of the piece, °C.</param>
/// <param name="WorstVerdict">The worst verdict of the step.</param>
public sealed record AirPoint(
    DateTimeOffset Time, double? TemperatureC, double? RelativeHumidityPct, double? DewPointC, double? PieceTemperatureC, Verdict WorstVerdict);
