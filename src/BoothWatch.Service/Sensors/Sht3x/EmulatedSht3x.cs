using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Sht3x;

/// <summary>An SHT3x at the level of its two-byte commands, in single-shot mode without clock stretching.</summary>
/// <param name="air">The true air at the sensor.</param>
/// <param name="time">Clock of the conversion times.</param>
/// <param name="seed">Seed of the noise.</param>
/// <remarks>Source: Sensirion, Datasheet SHT3x-DIS, table 4 (timing, typical values), sections 4.3, 4.9 and 4.10 (commands).</remarks>
public sealed class EmulatedSht3x(Func<AirSignal> air, TimeProvider time, int seed) : EmulatedSht(air, time, seed)
{
    // Status after a reset: alert pending and reset detected. Source: table 18, default values (from memory).
    private const ushort AfterReset = 0x8010;

    private static readonly TimeSpan ResetTime = TimeSpan.FromMilliseconds(0.5);
    private static readonly TimeSpan HighTime = TimeSpan.FromMilliseconds(12.5);
    private static readonly TimeSpan MediumTime = TimeSpan.FromMilliseconds(4.5);
    private static readonly TimeSpan LowTime = TimeSpan.FromMilliseconds(2.5);

    /// <inheritdoc/>
    protected override void OnWrite(ReadOnlySpan<byte> bytes)
    {
        switch (bytes)
        {
            case [0x30, 0xA2]:
                Rest(ResetTime);
                break;
            case [0x30, 0x6D] or [0x30, 0x66] when !Busy:
                break;
            case [0x24, 0x00] when !Busy:
                Convert(HighTime);
                break;
            case [0x24, 0x0B] when !Busy:
                Convert(MediumTime);
                break;
            case [0x24, 0x16] when !Busy:
                Convert(LowTime);
                break;
            case [0xF3, 0x2D] when !Busy:
                Identify(AfterReset);
                break;
            default:
                throw NotAcknowledged();
        }
    }

    /// <inheritdoc/>
    protected override double HumidityCount(double relativeHumidityPct) => relativeHumidityPct * 65535 / 100;
}
