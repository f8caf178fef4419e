namespace BoothWatch.Service.Sensors;

/// <summary>Where a sensor sits on an I²C bus.</summary>
/// <param name="Name">The configured name of the sensor.</param>
/// <param name="Source">Real or emulated.</param>
/// <param name="Bus">Number of the bus: n of <c>/dev/i2c-n</c>.</param>
/// <param name="Address">7-bit address.</param>
public sealed record I2cPlace(string Name, SignalSource Source, int Bus, int Address);
