using BoothWatch.Readings;

namespace BoothWatch.Checks;

/// <summary>How settled readings are at a moment.</summary>
/// <param name="NotYet">Why they do not count as settled; null when they do.</param>
/// <param name="HumidityPct">Mean humidity over the time that counts, %; null without a reading.</param>
/// <param name="TemperatureC">Mean temperature over it, °C; null without a reading.</param>
/// <param name="HumidityChangePct">Highest less lowest humidity within it, %.</param>
/// <param name="TemperatureChangeC">Highest less lowest temperature within it, °C.</param>
/// <param name="Elapsed">Time since it began.</param>
public sealed record SettlingState(
    Cause? NotYet,
    double? HumidityPct,
    double? TemperatureC,
    double HumidityChangePct,
    double TemperatureChangeC,
    TimeSpan Elapsed)
{
    /// <summary>True when they count as settled.</summary>
    public bool IsSettled => NotYet is null;
}
