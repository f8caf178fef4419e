using System.Buffers.Binary;

namespace BoothWatch.Service.Sensors;

/// <summary>
/// Checks the six-byte answer of the SHT3x and SHT4x families: temperature word, its CRC, humidity word, its CRC.
/// Keeps the two words of the last sound answer, so that both values come from one measurement.
/// </summary>
/// <remarks>Source: Sensirion, Datasheet SHT3x-DIS, sections 4.4 and 4.12; Datasheet SHT4x, section 4.4.</remarks>
public sealed class ShtAnswerCheck : AnswerCheck
{
    private const int AnswerLength = 6;
    private const int WordLength = 2;
    private const int HumidityOffset = 3;

    /// <summary>Temperature word of the last sound answer.</summary>
    public ushort TemperatureWord { get; private set; }

    /// <summary>Humidity word of the last sound answer.</summary>
    public ushort HumidityWord { get; private set; }

    /// <inheritdoc/>
    public override string? Received(ReadOnlySpan<byte> written, ReadOnlySpan<byte> answer)
    {
        if (answer.Length != AnswerLength)
        {
            return $"an answer of {answer.Length} bytes, expected {AnswerLength}";
        }

        if (AllAre(answer, 0x00))
        {
            return "all-zero answer: the data line is held low, or the part is not powered";
        }

        if (AllAre(answer, 0xFF))
        {
            return "answer of all ones: nothing drives the data line";
        }

        string? wrong = Crc("temperature", answer) ?? Crc("humidity", answer[HumidityOffset..]);
        if (wrong is null)
        {
            TemperatureWord = BinaryPrimitives.ReadUInt16BigEndian(answer);
            HumidityWord = BinaryPrimitives.ReadUInt16BigEndian(answer[HumidityOffset..]);
        }

        return wrong;
    }

    private static string? Crc(string word, ReadOnlySpan<byte> bytes)
    {
        byte expected = Crc8.Sensirion(bytes[..WordLength]);
        byte received = bytes[WordLength];
        return received == expected
            ? null
            : $"CRC of the {word} word is 0x{received:X2}, expected 0x{expected:X2}";
    }
}
