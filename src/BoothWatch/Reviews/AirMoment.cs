using BoothWatch.Verdicts;

namespace BoothWatch.Reviews;

/// <summary>A short stretch of recorded booth air, as its mean.</summary>
/// <param name="Time">When it begins, UTC.</param>
/// <param name="Length">How long it is.</param>
/// <param name="TemperatureC">Air temperature, °C.</param>
/// <param name="DewPointC">Dew point, °C.</param>
/// <param name="PieceTemperatureC">Temperature of the piece, °C; null when it was not known.</param>
/// <param name="Verdict">The worst verdict shown meanwhile; null when none was.</param>
public sealed record AirMoment(
    DateTimeOffset Time, TimeSpan Length, double TemperatureC, double DewPointC, double? PieceTemperatureC, Verdict? Verdict)
{
    /// <summary>When it ends, UTC.</summary>
    public DateTimeOffset End => Time + Length;
}
