using System.Buffers.Binary;

namespace BoothWatch.Service.Sensors.Bme280;

/// <summary>
/// Checks the registers of a BME280, which sends no check byte: its id, that its calibration is one,
/// and that each result is neither skipped nor what a dead bus gives.
/// </summary>
public sealed class Bme280AnswerCheck : AnswerCheck
{
    /// <inheritdoc/>
    public override string? Received(ReadOnlySpan<byte> written, ReadOnlySpan<byte> answer) => written switch
    {
        [Bme280Registers.ChipId] => answer is [Bme280Registers.ChipIdValue]
            ? null
            : $"chip id is 0x{answer[0]:X2}, expected 0x{Bme280Registers.ChipIdValue:X2}{DeadBus(answer)}",
        [Bme280Registers.CalibrationT1 or Bme280Registers.CalibrationT2 or Bme280Registers.CalibrationP1 or Bme280Registers.CalibrationH2] =>
            DeadBus(answer) is { Length: > 0 } dead ? $"calibration word at 0x{written[0]:X2} is blank{dead}" : null,
        [Bme280Registers.Temperature] => Result("temperature", answer),
        [Bme280Registers.Pressure] => Result("pressure", answer),
        [Bme280Registers.Humidity] => Result("humidity", answer),
        _ => null,
    };

    private static string? Result(string quantity, ReadOnlySpan<byte> answer)
    {
        if (DeadBus(answer) is { Length: > 0 } dead)
        {
            return $"no {quantity}{dead}";
        }

        bool skipped = answer.Length == 2
            ? BinaryPrimitives.ReadUInt16BigEndian(answer) == Bme280Registers.Skipped16
            : ((answer[0] << 12) | (answer[1] << 4) | (answer[2] >> 4)) == Bme280Registers.Skipped20;
        return skipped ? $"no {quantity}: the part did not measure it (it lost its settings, for example by a dip of the supply)" : null;
    }

    private static string DeadBus(ReadOnlySpan<byte> answer) =>
        AllAre(answer, 0x00) ? ": all-zero answer, the data line is held low"
        : AllAre(answer, 0xFF) ? ": answer of all ones, nothing drives the data line"
        : "";
}
