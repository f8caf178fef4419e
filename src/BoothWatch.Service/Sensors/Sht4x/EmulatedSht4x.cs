using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Sht4x;

/// <summary>An SHT4x at the level of its one-byte commands.</summary>
/// <param name="air">The true air at the sensor.</param>
/// <param name="time">Clock of the conversion times.</param>
/// <param name="seed">Seed of the noise.</param>
/// <remarks>Source: Sensirion, Datasheet SHT4x version 6, sections 3.1 (timing, typical values) and 4.5 (commands).</remarks>
public sealed class EmulatedSht4x(Func<AirSignal> air, TimeProvider time, int seed) : EmulatedSht(air, time, seed)
{
    private const byte MeasureHigh = 0xFD;
    private const byte MeasureMedium = 0xF6;
    private const byte MeasureLow = 0xE0;
    private const byte SoftReset = 0x94;

    private static readonly TimeSpan ResetTime = TimeSpan.FromMilliseconds(0.5);
    private static readonly TimeSpan HighTime = TimeSpan.FromMilliseconds(6.9);
    private static readonly TimeSpan MediumTime = TimeSpan.FromMilliseconds(3.7);
    private static readonly TimeSpan LowTime = TimeSpan.FromMilliseconds(1.3);

    /// <inheritdoc/>
    protected override void OnWrite(ReadOnlySpan<byte> bytes)
    {
        switch (bytes)
        {
            case [SoftReset]:
                Rest(ResetTime);
                break;
            case [MeasureHigh] when !Busy:
                Convert(HighTime);
                break;
            case [MeasureMedium] when !Busy:
                Convert(MediumTime);
                break;
            case [MeasureLow] when !Busy:
                Convert(LowTime);
                break;
            case [Sht4xPart.ReadSerial] when !Busy:
                Identify(0x0F2A, 0x71C4);
                break;
            default:
                throw NotAcknowledged();
        }
    }

    /// <inheritdoc/>
    protected override double HumidityCount(double relativeHumidityPct) => (relativeHumidityPct + 6) * 65535 / 125;
}
