using System.Device.I2c;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Bme280;

/// <summary>The BME280 in the configuration.</summary>
public sealed class Bme280Part() : I2cPart("bme280", [Bme280Sensor.DefaultAddress, 0x77], [SensorRole.BoothAir, SensorRole.BoothAirCheck, SensorRole.IntakeAir])
{
    /// <inheritdoc/>
    public override bool GivesPressure(SensorOptions options) => options.StationPressure;

    /// <inheritdoc/>
    /// <remarks>Reads the chip id; that of its kin without humidity (BMP280) is another. Source: Bosch, BME280 data sheet, section 5.4.1.</remarks>
    public override bool Recognises(I2cDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        Span<byte> answer = stackalloc byte[1];
        device.WriteRead([Bme280Registers.ChipId], answer);
        return answer[0] == Bme280Registers.ChipIdValue;
    }

    /// <inheritdoc/>
    protected override EmulatedChip Emulate(SensorRole role, SensorOptions options, SensorWiring wiring) =>
        new EmulatedBme280(() => wiring.Shop.AirAt(role), SensorWiring.ConversionClock, wiring.Shop.SeedOf(role));

    /// <inheritdoc/>
    protected override ISensor Create(SensorRole role, SensorOptions options, I2cPlace place, SensorWiring wiring) =>
        new Bme280Sensor(role, place, wiring.Buses, options.StationPressure);
}
