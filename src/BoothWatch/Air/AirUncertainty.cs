namespace BoothWatch.Air;

/// <summary>Standard uncertainties (k = 1) of the measured air and piece.</summary>
/// <param name="TemperatureC">Of the air temperature, °C.</param>
/// <param name="RelativeHumidityPct">Of the relative humidity, percentage points.</param>
/// <param name="PressurePa">Of the station pressure, Pa.</param>
public sealed record AirUncertainty(double TemperatureC, double RelativeHumidityPct, double PressurePa);
