using BoothWatch.Verdicts;

namespace BoothWatch.Reviews;

/// <summary>The air around a coat at one moment.</summary>
/// <param name="Time">When, UTC.</param>
/// <param name="TemperatureC">Air temperature, °C.</param>
/// <param name="DewPointC">Dew point, °C.</param>
/// <param name="PieceTemperatureC">Temperature of the piece, °C; null when not known.</param>
/// <param name="BlushLimitC">Dew point at which a coat like this one would begin to blush in that air, °C; null when not known.</param>
/// <param name="Verdict">The verdict that was shown; null when none was.</param>
public sealed record ReviewAirPoint(
    DateTimeOffset Time, double TemperatureC, double DewPointC, double? PieceTemperatureC, double? BlushLimitC, Verdict? Verdict);
