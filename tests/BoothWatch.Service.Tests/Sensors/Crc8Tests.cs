using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Tests.Sensors;

public class Crc8Tests
{
    // Sensirion, Datasheet SHT3x-DIS version 5, table 20: CRC(0xBEEF) = 0x92.
    // TI, HDC302x data sheet SNAU265, section 3.3 (same polynomial and initial value): CRC(0xABAB) = 0x72.
    [Theory]
    [InlineData(0xBE, 0xEF, 0x92)]
    [InlineData(0xAB, 0xAB, 0x72)]
    public void Sensirion_WorkedExample_Matches(byte first, byte second, byte expected) =>
        Assert.Equal(expected, Crc8.Sensirion([first, second]));

    // Melexis, application note 390119061402 "SMBus communication with MLX90614": the read of 0x3AD2 from RAM 0x07 at 0x5A ends in 0x30.
    // The same note: the write of 0x0000 to EEPROM 0x0E at address 0x00 ends in 0x6F.
    [Theory]
    [InlineData(new byte[] { 0xB4, 0x07, 0xB5, 0xD2, 0x3A }, 0x30)]
    [InlineData(new byte[] { 0x00, 0x2E, 0x00, 0x00 }, 0x6F)]
    public void PacketErrorCode_WorkedExample_Matches(byte[] transaction, byte expected) =>
        Assert.Equal(expected, Crc8.PacketErrorCode(transaction));

    // Catalogue of parametrised CRC algorithms (reveng): CRC-8/SMBUS and CRC-8/NRSC-5 of "123456789".
    [Fact]
    public void Crc8_CheckString_MatchesTheCatalogue()
    {
        Assert.Equal(0xF4, Crc8.PacketErrorCode("123456789"u8));
        Assert.Equal(0xF7, Crc8.Sensirion("123456789"u8));
    }
}
