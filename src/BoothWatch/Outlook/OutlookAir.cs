namespace BoothWatch.Outlook;

/// <summary>The air of a moment, as far as the outlook needs it.</summary>
/// <param name="TemperatureC">Air temperature, °C.</param>
/// <param name="DewPointC">Dew point over water, °C; at most the temperature.</param>
public readonly record struct OutlookAir(double TemperatureC, double DewPointC);
