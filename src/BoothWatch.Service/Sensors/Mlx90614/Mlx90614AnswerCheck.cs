using System.Buffers.Binary;

namespace BoothWatch.Service.Sensors.Mlx90614;

/// <summary>
/// Checks the answer of an MLX90614 to a read of a RAM word: low byte, high byte, packet error code.
/// The binding leaves the code on the bus, so it is read here.
/// </summary>
/// <param name="address">Address of the part: it is covered by the code.</param>
/// <remarks>Source: Melexis, MLX90614 data sheet 3901090614, sections 8.4.3 and 8.4.5.</remarks>
public sealed class Mlx90614AnswerCheck(int address) : AnswerCheck
{
    private const int AnswerLength = 3;
    private const ushort ErrorFlag = 0x8000;

    /// <inheritdoc/>
    public override int ExtraBytes => 1;

    /// <inheritdoc/>
    public override string? Received(ReadOnlySpan<byte> written, ReadOnlySpan<byte> answer)
    {
        if (answer.Length != AnswerLength || written.Length != 1)
        {
            return $"an answer of {answer.Length} bytes to {written.Length}, expected {AnswerLength} to 1";
        }

        if (AllAre(answer, 0x00))
        {
            return "all-zero answer: the data line is held low, or the part is not powered";
        }

        if (AllAre(answer, 0xFF))
        {
            return "answer of all ones: nothing drives the data line";
        }

        byte expected = Crc8.PacketErrorCode([(byte)(address << 1), written[0], (byte)((address << 1) | 1), answer[0], answer[1]]);
        return answer[2] != expected ? $"packet error code is 0x{answer[2]:X2}, expected 0x{expected:X2}"
            : (BinaryPrimitives.ReadUInt16LittleEndian(answer) & ErrorFlag) != 0 ? "the part flags its temperature as in error"
            : null;
    }
}
