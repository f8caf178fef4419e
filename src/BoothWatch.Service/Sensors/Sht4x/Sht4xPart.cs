using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Sht4x;

/// <summary>The SHT4x in the configuration.</summary>
public sealed class Sht4xPart() : I2cPart("sht4x", [Sht4xSensor.DefaultAddress, 0x45, 0x46], [SensorRole.BoothAir, SensorRole.BoothAirCheck, SensorRole.IntakeAir])
{
    /// <inheritdoc/>
    protected override EmulatedChip Emulate(SensorRole role, SensorOptions options, SensorWiring wiring) =>
        new EmulatedSht4x(() => wiring.Shop.AirAt(role), SensorWiring.ConversionClock, wiring.Shop.SeedOf(role));

    /// <inheritdoc/>
    protected override ISensor Create(SensorRole role, SensorOptions options, I2cPlace place, SensorWiring wiring) =>
        new Sht4xSensor(role, place, wiring.Buses);
}
