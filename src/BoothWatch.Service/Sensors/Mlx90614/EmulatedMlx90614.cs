using System.Buffers.Binary;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Mlx90614;

/// <summary>An MLX90614 at the level of its RAM words, read with packet error code.</summary>
/// <param name="objectC">The true surface temperature that it sees, °C.</param>
/// <param name="ambientC">The true temperature of the sensor itself, °C.</param>
/// <param name="address">Its address: it is covered by the packet error code.</param>
/// <param name="seed">Seed of the noise.</param>
/// <remarks>Source: Melexis, MLX90614 data sheet 3901090614, sections 8.4.3 to 8.4.5 and 8.7: words of 0.02 K.</remarks>
public sealed class EmulatedMlx90614(Func<double> objectC, Func<double> ambientC, int address, int seed) : EmulatedChip(seed)
{
    private const byte AmbientWord = 0x06;
    private const byte ObjectWord = 0x07;
    private const double CountsPerK = 50;
    private const double ZeroCelsiusK = 273.15;
    private const ushort HighestCount = 0x7FFF;

    // 0.05 °C of noise. Source: data sheet, figure on noise against filter settings (from memory).
    private const double NoiseC = 0.05;

    private byte _command;
    private ushort? _lastObject;

    /// <inheritdoc/>
    protected override int? CheckByte => 2;

    /// <inheritdoc/>
    protected override void OnWrite(ReadOnlySpan<byte> bytes)
    {
        if (bytes is not [AmbientWord or ObjectWord])
        {
            throw NotAcknowledged();
        }

        _command = bytes[0];
    }

    /// <inheritdoc/>
    protected override void OnRead(Span<byte> bytes)
    {
        ushort word = _command == AmbientWord ? Count(ambientC() + Noise(NoiseC)) : ObjectCount();
        Span<byte> answer = stackalloc byte[3];
        BinaryPrimitives.WriteUInt16LittleEndian(answer, word);
        answer[2] = Crc8.PacketErrorCode([(byte)(address << 1), _command, (byte)((address << 1) | 1), answer[0], answer[1]]);
        bytes.Fill(0xFF);
        answer[..Math.Min(bytes.Length, answer.Length)].CopyTo(bytes);
    }

    private static ushort Count(double temperatureC) =>
        (ushort)Math.Clamp(Math.Round((temperatureC + ZeroCelsiusK) * CountsPerK), 0, HighestCount);

    private ushort ObjectCount()
    {
        if (Converts() || _lastObject is null)
        {
            _lastObject = Fault() == BusFault.Saturated
                ? HighestCount
                : Count(objectC() + Noise(NoiseC) + (DriftOfScale * 100));
        }

        return _lastObject.Value;
    }
}
