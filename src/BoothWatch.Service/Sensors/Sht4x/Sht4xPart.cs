using System.Device.I2c;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Sht4x;

/// <summary>The SHT4x in the configuration.</summary>
public sealed class Sht4xPart() : I2cPart("sht4x", [Sht4xSensor.DefaultAddress, 0x45, 0x46], [SensorRole.BoothAir, SensorRole.BoothAirCheck, SensorRole.IntakeAir])
{
    internal const byte ReadSerial = 0x89;

    // Well beyond what the part takes; it acknowledges no read before. Assumed.
    private static readonly TimeSpan AnswerTime = TimeSpan.FromMilliseconds(2);

    /// <inheritdoc/>
    /// <remarks>Reads the serial number, two words with their CRC. Source: Sensirion, Datasheet SHT4x, section 4.5.</remarks>
    public override bool Recognises(I2cDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        Span<byte> answer = stackalloc byte[6];
        device.Write([ReadSerial]);
        SpinWait.SpinUntil(() => false, AnswerTime);
        device.Read(answer);
        return new ShtAnswerCheck().Received([ReadSerial], answer) is null;
    }

    /// <inheritdoc/>
    protected override EmulatedChip Emulate(SensorRole role, SensorOptions options, SensorWiring wiring) =>
        new EmulatedSht4x(() => wiring.Shop.AirAt(role), SensorWiring.ConversionClock, wiring.Shop.SeedOf(role));

    /// <inheritdoc/>
    protected override ISensor Create(SensorRole role, SensorOptions options, I2cPlace place, SensorWiring wiring) =>
        new Sht4xSensor(role, place, wiring.Buses);
}
