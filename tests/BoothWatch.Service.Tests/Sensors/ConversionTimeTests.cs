using BoothWatch.Service.Sensors.Bme280;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.FilterPressure;
using BoothWatch.Service.Sensors.Sht3x;
using BoothWatch.Service.Sensors.Sht4x;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Sensors;

/// <summary>Emulated chips take the time of a conversion, and show as the real ones do that it has not passed.</summary>
public class ConversionTimeTests
{
    private readonly FakeTimeProvider _time = new();

    public static TheoryData<string, byte[], double> Commands => new()
    {
        // Sensirion data sheets, tables of timing: longest measurement, ms.
        { "sht4x", [0xFD], 8.3 },
        { "sht4x", [0xF6], 4.5 },
        { "sht4x", [0xE0], 1.7 },
        { "sht3x", [0x24, 0x00], 15.5 },
        { "sht3x", [0x24, 0x0B], 6.5 },
        { "sht3x", [0x24, 0x16], 4.5 },
    };

    [Theory]
    [MemberData(nameof(Commands))]
    public void Sht_ReadBeforeItIsDone_IsNotAcknowledged(string part, byte[] command, double longestMs)
    {
        EmulatedChip chip = part == "sht4x" ? new EmulatedSht4x(Air, _time, 1) : new EmulatedSht3x(Air, _time, 1);
        _time.Advance(TimeSpan.FromMilliseconds(2));
        byte[] answer = new byte[6];
        Assert.Throws<IOException>(() => chip.Read(answer));

        chip.Write(command);
        Assert.Throws<IOException>(() => chip.Read(answer));
        Assert.Throws<IOException>(() => chip.Write(command));

        _time.Advance(TimeSpan.FromMilliseconds(longestMs));
        chip.Read(answer);
        Assert.Throws<IOException>(() => chip.Read(answer));
    }

    [Fact]
    public void Bme280_ForcedConversion_ShowsItsStateAndThenSleeps()
    {
        EmulatedBme280 chip = new(Air, _time, 1);
        Assert.Equal(0x80, Register(chip, 0xFA));

        chip.Write([0xF2, 0x01]);
        chip.Write([0xF4, 0b001_001_01]);
        Assert.Equal(0b1000, Register(chip, 0xF3) & 0b1000);
        Assert.Equal(0b01, Register(chip, 0xF4) & 0b11);

        // Data sheet BST-BME280-DS002, section 9.1: 9.3 ms at most with single oversampling of all three.
        _time.Advance(TimeSpan.FromMilliseconds(9.3));
        Assert.Equal(0, Register(chip, 0xF3) & 0b1000);
        Assert.Equal(0b00, Register(chip, 0xF4) & 0b11);
        Assert.NotEqual(0x80, Register(chip, 0xFA));
    }

    [Fact]
    public void Bme280_WithoutHumiditySampling_SkipsIt()
    {
        EmulatedBme280 chip = new(Air, _time, 1);
        chip.Write([0xF4, 0b001_001_01]);
        _time.Advance(TimeSpan.FromMilliseconds(10));

        Assert.Equal(0x80, Register(chip, 0xFD));
        Assert.Equal(0x00, Register(chip, 0xFE));
        Assert.NotEqual(0x80, Register(chip, 0xFA));
    }

    [Fact]
    public void Ads1115_Conversion_HoldsTheReadyBitLowUntilItIsDone()
    {
        EmulatedAds1115 chip = new(_ => 1.5, _time, 1);
        chip.Write([0x01, 0b1_100_000_1, 0b100_00011]);
        Assert.Equal(0, Register(chip, 0x01) & 0x80);

        // Data sheet SBAS444: 128 conversions a second.
        _time.Advance(TimeSpan.FromSeconds(1.001 / 128));
        Assert.Equal(0x80, Register(chip, 0x01) & 0x80);

        byte[] conversion = new byte[2];
        chip.Write([0x00]);
        chip.Read(conversion);
        Assert.Equal(1.5, ((conversion[0] << 8) | conversion[1]) * 6.144 / 32768, 0.003);
    }

    private static AirSignal Air() => new(20, 50, 100_000);

    private static byte Register(EmulatedChip chip, byte register)
    {
        byte[] value = new byte[1];
        chip.Write([register]);
        chip.Read(value);
        return value[0];
    }
}
