namespace BoothWatch.Film;

/// <summary>Where blush just begins for one coat.</summary>
/// <param name="RelativeHumidityPct">Critical humidity in air of the coat's temperature, %; 100 when saturated air does not blush it.</param>
/// <param name="DewPointC">Critical dew point, °C.</param>
/// <param name="Limit">What sets it.</param>
public sealed record CriticalPoint(double RelativeHumidityPct, double DewPointC, CriticalLimit Limit);
