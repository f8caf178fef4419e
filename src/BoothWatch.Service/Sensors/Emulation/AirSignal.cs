namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>The true air at an emulated sensor.</summary>
/// <param name="TemperatureC">Temperature, °C.</param>
/// <param name="RelativeHumidityPct">Relative humidity over water, %.</param>
/// <param name="PressurePa">Absolute pressure, Pa.</param>
public readonly record struct AirSignal(double TemperatureC, double RelativeHumidityPct, double PressurePa);
