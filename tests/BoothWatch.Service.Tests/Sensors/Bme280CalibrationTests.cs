using BoothWatch.Service.Sensors.Bme280;
using BoothWatch.Service.Sensors.Emulation;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BoothWatch.Service.Tests.Sensors;

public class Bme280CalibrationTests
{
    // Bosch, BMP280 data sheet BST-BMP280-DS001, section 3.12, worked example (from memory): fine temperature 128422, 25.08 °C, 100653.27 Pa.
    private static readonly Bme280Calibration Bosch = new()
    {
        T = (27504, 26435, -1000),
        P1 = 36477,
        P = (-10685, 3024, 2855, 140, -7, 15500, -14600, 6000),
        H = (75, 360, 0, 320, 50, 30),
    };

    [Fact]
    public void Compensation_WorkedExampleOfBosch_Matches()
    {
        double fine = Bosch.Fine(519_888);
        Assert.Equal(128_422, fine, 1.0);
        Assert.Equal(25.08, Bme280Calibration.TemperatureC(fine), 0.005);
        Assert.Equal(100_653.27, Bosch.PressurePa(415_148, 128_422), 0.1);
    }

    [Property]
    public Property Counts_OfAnyAir_GiveItBack() => Prop.ForAll(
        Gen.Choose(-2000, 6000).ToArbitrary(),
        Gen.Choose(50, 990).ToArbitrary(),
        Gen.Choose(70_000, 108_000).ToArbitrary(),
        (centiC, permille, pressurePa) =>
        {
            Bme280Calibration chip = EmulatedBme280.Calibration;
            int temperature = chip.TemperatureCount(centiC / 100.0);
            double fine = chip.Fine(temperature);
            double temperatureC = Bme280Calibration.TemperatureC(fine);
            double pressure = chip.PressurePa(chip.PressureCount(pressurePa, fine), fine);
            double humidity = chip.RelativeHumidityPct(chip.HumidityCount(permille / 10.0, fine), fine);
            return Math.Abs(temperatureC - (centiC / 100.0)) < 0.003
                && Math.Abs(pressure - pressurePa) < 0.2
                && Math.Abs(humidity - (permille / 10.0)) < 0.01;
        });

    [Fact]
    public void Calibration_OfTheEmulatedChip_ReadsBackFromItsRegisters()
    {
        EmulatedBme280 chip = new(() => new AirSignal(20, 50, 100_000), TimeProvider.System, 1);
        byte[] block = new byte[24];
        chip.Write([0x88]);
        chip.Read(block);

        // First word, little-endian: T1; second: T2. Data sheet BST-BME280-DS002, table 16.
        Assert.Equal(EmulatedBme280.Calibration.T.T1, BitConverter.ToUInt16(block, 0));
        Assert.Equal(EmulatedBme280.Calibration.T.T2, BitConverter.ToInt16(block, 2));
        Assert.Equal(EmulatedBme280.Calibration.P1, BitConverter.ToUInt16(block, 6));
        Assert.Equal(EmulatedBme280.Calibration.P.P9, BitConverter.ToInt16(block, 22));
    }
}
