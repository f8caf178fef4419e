using System.Buffers.Binary;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>
/// What the emulated SHT3x and SHT4x have in common: a command starts a conversion, the chip does not acknowledge a read
/// until it is done, and one answer of two words with their CRC may be fetched a conversion.
/// </summary>
/// <param name="air">The true air at the sensor, asked at each conversion.</param>
/// <param name="time">Clock of the conversion times.</param>
/// <param name="seed">Seed of the noise.</param>
public abstract class EmulatedSht(Func<AirSignal> air, TimeProvider time, int seed) : EmulatedChip(seed)
{
    private const double FullScale = 65535;

    // Repeatability (high) is stated as 3 standard deviations: 0.08 %RH and 0.04 °C. Source: Sensirion, Datasheet SHT4x, tables 1 and 2.
    private const double HumidityNoisePct = 0.08 / 3;
    private const double TemperatureNoiseC = 0.04 / 3;

    private readonly byte[] _answer = new byte[6];
    private byte[]? _identity;
    private bool _converted;
    private bool _fetchable;
    private long _busySince;
    private TimeSpan _busyFor;

    /// <inheritdoc/>
    protected override int? CheckByte => 5;

    /// <summary>True while the chip works on a command and acknowledges nothing.</summary>
    protected bool Busy => time.GetElapsedTime(_busySince) < _busyFor;

    /// <inheritdoc/>
    protected override void OnRead(Span<byte> bytes)
    {
        if (Busy || (!_fetchable && _identity is null))
        {
            throw NotAcknowledged();
        }

        bytes.Fill(0xFF);
        if (_identity is { } identity)
        {
            identity.AsSpan(0, Math.Min(bytes.Length, identity.Length)).CopyTo(bytes);
            _identity = null;
            return;
        }

        _answer.AsSpan(0, Math.Min(bytes.Length, _answer.Length)).CopyTo(bytes);
        _fetchable = false;
    }

    /// <summary>Humidity word of a relative humidity.</summary>
    protected abstract double HumidityCount(double relativeHumidityPct);

    /// <summary>Gives words that identify the part, each with its CRC, at the next read.</summary>
    protected void Identify(params ReadOnlySpan<ushort> words)
    {
        _identity = new byte[3 * words.Length];
        for (int i = 0; i < words.Length; i++)
        {
            Span<byte> word = _identity.AsSpan(3 * i, 2);
            BinaryPrimitives.WriteUInt16BigEndian(word, words[i]);
            _identity[(3 * i) + 2] = Crc8.Sensirion(word);
        }
    }

    /// <summary>Does nothing for a while, as after a reset.</summary>
    protected void Rest(TimeSpan duration)
    {
        _fetchable = false;
        _identity = null;
        _busySince = time.GetTimestamp();
        _busyFor = duration;
    }

    /// <summary>Starts a conversion.</summary>
    protected void Convert(TimeSpan duration)
    {
        Rest(duration);
        if (Converts() || !_converted)
        {
            AirSignal now = air();
            double temperatureC = now.TemperatureC + Noise(TemperatureNoiseC);
            double humidity = HumidityCount(now.RelativeHumidityPct + Noise(HumidityNoisePct));
            humidity += DriftOfScale * FullScale;
            Put(0, (temperatureC + 45) * FullScale / 175);
            Put(3, Fault() == BusFault.Saturated ? FullScale : humidity);
            _converted = true;
        }

        _fetchable = true;
    }

    private void Put(int offset, double count)
    {
        Span<byte> word = _answer.AsSpan(offset, 2);
        BinaryPrimitives.WriteUInt16BigEndian(word, (ushort)Math.Clamp(Math.Round(count), 0, FullScale));
        _answer[offset + 2] = Crc8.Sensirion(word);
    }
}
