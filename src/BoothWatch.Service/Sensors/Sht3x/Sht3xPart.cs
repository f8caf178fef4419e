using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Sht3x;

/// <summary>The SHT3x in the configuration.</summary>
public sealed class Sht3xPart() : I2cPart("sht3x", [Sht3xSensor.DefaultAddress, 0x45], [SensorRole.BoothAir, SensorRole.BoothAirCheck, SensorRole.IntakeAir])
{
    /// <inheritdoc/>
    protected override EmulatedChip Emulate(SensorRole role, SensorOptions options, SensorWiring wiring) =>
        new EmulatedSht3x(() => wiring.Shop.AirAt(role), SensorWiring.ConversionClock, wiring.Shop.SeedOf(role));

    /// <inheritdoc/>
    protected override ISensor Create(SensorRole role, SensorOptions options, I2cPlace place, SensorWiring wiring) =>
        new Sht3xSensor(role, place, wiring.Buses);
}
