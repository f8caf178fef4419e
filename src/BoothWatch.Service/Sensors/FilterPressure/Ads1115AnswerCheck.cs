using System.Buffers.Binary;

namespace BoothWatch.Service.Sensors.FilterPressure;

/// <summary>
/// Checks an ADS1115, which sends no check byte: its configuration must read back as it was written, whenever the binding
/// waits for a conversion. A bus held low or high, another part at the address and a part that lost its supply all fail that.
/// </summary>
/// <remarks>Source: Texas Instruments, ADS1115 data sheet SBAS444, section on the configuration register (bit 15 is the conversion state).</remarks>
public sealed class Ads1115AnswerCheck : AnswerCheck
{
    private const byte ConfigurationRegister = 0x01;
    private const ushort SettingBits = 0x7FFF;

    private ushort? _configured;

    /// <inheritdoc/>
    public override void Sent(ReadOnlySpan<byte> written)
    {
        if (written is [ConfigurationRegister, _, _])
        {
            _configured = BinaryPrimitives.ReadUInt16BigEndian(written[1..]);
        }
    }

    /// <inheritdoc/>
    public override string? Received(ReadOnlySpan<byte> written, ReadOnlySpan<byte> answer)
    {
        if (written is not [ConfigurationRegister] || _configured is not { } configured)
        {
            return null;
        }

        int read = BinaryPrimitives.ReadUInt16BigEndian(answer);
        string cause = AllAre(answer, 0x00) ? " (all-zero answer)" : AllAre(answer, 0xFF) ? " (answer of all ones)" : "";
        return (read & SettingBits) == (configured & SettingBits)
            ? null
            : $"configuration reads 0x{read & SettingBits:X4}, expected 0x{configured & SettingBits:X4}{cause}";
    }
}
