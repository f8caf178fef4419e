namespace BoothWatch.Checks;

/// <summary>When readings count as settled.</summary>
/// <param name="AtLeast">Least time since it began, however steady they are.</param>
/// <param name="Over">They must have been steady for so long.</param>
/// <param name="HumidityPct">Most change of humidity over that time, % of relative humidity.</param>
/// <param name="TemperatureC">Most change of temperature over that time, °C.</param>
/// <param name="LongestGap">Longest time without a reading; after a longer one the time begins anew.</param>
public sealed record SettlingLimits(TimeSpan AtLeast, TimeSpan Over, double HumidityPct, double TemperatureC, TimeSpan LongestGap);
