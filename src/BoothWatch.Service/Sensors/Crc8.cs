namespace BoothWatch.Service.Sensors;

/// <summary>The two 8-bit cyclic redundancy checks that the parts use; most significant bit first, no final inversion.</summary>
public static class Crc8
{
    private const byte SensirionPolynomial = 0x31;
    private const byte SensirionInitial = 0xFF;
    private const byte SmbusPolynomial = 0x07;

    /// <summary>The check byte of a data word of the SHT family: x⁸ + x⁵ + x⁴ + 1, initial value 0xFF.</summary>
    /// <remarks>Source: Sensirion, Datasheet SHT3x-DIS, table 20. Worked example there: 0xBEEF gives 0x92.</remarks>
    public static byte Sensirion(ReadOnlySpan<byte> data) => Of(data, SensirionPolynomial, SensirionInitial);

    /// <summary>The packet error code of SMBus: x⁸ + x² + x + 1, initial value 0, over all bytes of the transaction with both address bytes.</summary>
    /// <remarks>
    /// Source: System Management Bus specification 3.2, section 6.4. Worked example of Melexis, application note
    /// 390119061402: 0xB4 0x07 0xB5 0xD2 0x3A gives 0x30.
    /// </remarks>
    public static byte PacketErrorCode(ReadOnlySpan<byte> data) => Of(data, SmbusPolynomial, 0);

    private static byte Of(ReadOnlySpan<byte> data, byte polynomial, byte initial)
    {
        byte crc = initial;
        foreach (byte value in data)
        {
            crc ^= value;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = (byte)((crc & 0x80) != 0 ? (crc << 1) ^ polynomial : crc << 1);
            }
        }

        return crc;
    }
}
