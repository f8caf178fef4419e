using System.Buffers.Binary;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.FilterPressure;

/// <summary>An ADS1115 at the level of its four registers, in single-shot mode.</summary>
/// <param name="inputV">The true voltage at each of AIN0 to AIN3.</param>
/// <param name="time">Clock of the conversion times.</param>
/// <param name="seed">Seed of the noise.</param>
/// <remarks>Source: Texas Instruments, ADS1115 data sheet SBAS444, register map; full scales and data rates of the configuration register.</remarks>
public sealed class EmulatedAds1115(Func<int, double> inputV, TimeProvider time, int seed) : EmulatedChip(seed)
{
    private const byte Conversion = 0;
    private const byte Configuration = 1;
    private const ushort PowerOnConfiguration = 0x8583;
    private const ushort StartBit = 0x8000;

    // About one step of noise at ±6.144 V, and that of the transmitter. Assumed.
    private const double NoiseV = 0.0005;

    private static readonly double[] FullScaleV = [6.144, 4.096, 2.048, 1.024, 0.512, 0.256, 0.256, 0.256];
    private static readonly double[] RatePerS = [8, 16, 32, 64, 128, 250, 475, 860];

    private readonly ushort[] _registers = [0, PowerOnConfiguration, 0x8000, 0x7FFF];
    private byte _pointer;
    private bool _converting;
    private bool _converted;
    private long _since;

    /// <inheritdoc/>
    protected override void OnWrite(ReadOnlySpan<byte> bytes)
    {
        _pointer = (byte)(bytes[0] & 0b11);
        if (bytes.Length < 3 || _pointer == Conversion)
        {
            return;
        }

        _registers[_pointer] = BinaryPrimitives.ReadUInt16BigEndian(bytes[1..]);
        if (_pointer == Configuration && (_registers[Configuration] & StartBit) != 0)
        {
            _converting = true;
            _since = time.GetTimestamp();
        }
    }

    /// <inheritdoc/>
    protected override void OnRead(Span<byte> bytes)
    {
        Finish();
        int value = _registers[_pointer];
        if (_pointer == Configuration)
        {
            value = _converting ? value & ~StartBit : value | StartBit;
        }

        Span<byte> answer = stackalloc byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(answer, (ushort)value);
        bytes.Fill(0xFF);
        answer[..Math.Min(bytes.Length, 2)].CopyTo(bytes);
    }

    private void Finish()
    {
        int configuration = _registers[Configuration];
        if (!_converting || time.GetElapsedTime(_since).TotalSeconds < 1 / RatePerS[(configuration >> 5) & 0b111])
        {
            return;
        }

        _converting = false;
        if (!Converts() && _converted)
        {
            return;
        }

        _converted = true;
        double fullScaleV = FullScaleV[(configuration >> 9) & 0b111];
        double volts = Input((configuration >> 12) & 0b111) + Noise(NoiseV) + (DriftOfScale * fullScaleV);
        double count = Fault() == BusFault.Saturated ? short.MaxValue : Math.Round(volts / fullScaleV * 32768);
        _registers[Conversion] = (ushort)(short)Math.Clamp(count, short.MinValue, short.MaxValue);
    }

    private double Input(int multiplexer) => multiplexer switch
    {
        0 => inputV(0) - inputV(1),
        1 => inputV(0) - inputV(3),
        2 => inputV(1) - inputV(3),
        3 => inputV(2) - inputV(3),
        _ => inputV(multiplexer - 4),
    };
}
