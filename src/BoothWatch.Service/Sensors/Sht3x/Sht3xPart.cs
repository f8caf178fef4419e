using System.Device.I2c;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Sht3x;

/// <summary>The SHT3x in the configuration.</summary>
public sealed class Sht3xPart() : I2cPart("sht3x", [Sht3xSensor.DefaultAddress, 0x45], [SensorRole.BoothAir, SensorRole.BoothAirCheck, SensorRole.IntakeAir])
{
    /// <inheritdoc/>
    /// <remarks>Reads the status register, one word with its CRC. Source: Sensirion, Datasheet SHT3x-DIS, section 4.11.</remarks>
    public override bool Recognises(I2cDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        Span<byte> answer = stackalloc byte[3];
        device.WriteRead([0xF3, 0x2D], answer);
        return Crc8.Sensirion(answer[..2]) == answer[2];
    }

    /// <inheritdoc/>
    protected override EmulatedChip Emulate(SensorRole role, SensorOptions options, SensorWiring wiring) =>
        new EmulatedSht3x(() => wiring.Shop.AirAt(role), SensorWiring.ConversionClock, wiring.Shop.SeedOf(role));

    /// <inheritdoc/>
    protected override ISensor Create(SensorRole role, SensorOptions options, I2cPlace place, SensorWiring wiring) =>
        new Sht3xSensor(role, place, wiring.Buses);
}
