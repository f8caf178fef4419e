using BoothWatch.Readings;
using BoothWatch.Service.Commands;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Commands;

public sealed class SensorsCommandTests : IDisposable
{
    private readonly string _path = Path.GetTempFileName();

    public void Dispose() => File.Delete(_path);

    [Fact]
    public async Task EmulatedSensors_AllGiveAReading()
    {
        CommandResult result = await Sensors("{}");

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains("boothAir       SHT4x at 0x44 on bus 1 (emulated)\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("piece          MLX90614 at 0x5A on bus 1 (emulated)\n", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("NO READING", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task SensorWithoutAReading_SaysCauseAndWhatToCheck_AndReturns1()
    {
        CommandResult result = await Sensors("""{ "sensors": { "proving": true, "boothAir": { "part": "sht4x", "source": "real", "bus": 250 }, "piece": { "part": "typed" }, "filter": { "part": "none" } } }""");

        Assert.Equal((1, ""), (result.ExitCode, result.Error));
        string[] lines = result.Out.Split('\n');
        Assert.Equal("boothAir       SHT4x at 0x44 on bus 250", lines[0]);
        Assert.StartsWith("               NO READING: bus 250 cannot be opened", lines[1], StringComparison.Ordinal);
        Assert.Contains("i2cdetect -y 250", lines[2], StringComparison.Ordinal);
        Assert.Contains("type the value in", result.Out, StringComparison.Ordinal);
        Assert.Contains("filter         not fitted", result.Out, StringComparison.Ordinal);
        Assert.Contains("exhaust proven", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WrongSetting_IsNamed_AndReturns2()
    {
        CommandResult result = await Sensors("""{ "sensors": { "boothAir": { "part": "sht4x", "address": "0x99" } } }""");

        Assert.Equal((2, ""), (result.ExitCode, result.Out));
        Assert.StartsWith("sensors:boothAir:address is 0x99; ", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "booth": { "altitudeM": 9000 } }""", "booth:altitudeM is 9000; ")]
    [InlineData("""{ "coat": { "cupMl": 1 } }""", "coat:cupMl is 1; ")]
    [InlineData("""{ "light": { "greenPin": 99 } }""", "light:greenPin is 99; ")]
    public async Task WrongSettingElsewhere_IsNamedToo_AndNothingIsAsked(string config, string says)
    {
        CommandResult result = await Sensors(config);

        Assert.Equal((2, ""), (result.ExitCode, result.Out));
        Assert.Contains(says, result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Quantity.BoothTemperature, 21.234, 0.12, "21.23 °C ±0.12")]
    [InlineData(Quantity.IntakeHumidity, 62.31, 1.8, "62.3 %RH ±1.8")]
    [InlineData(Quantity.StationPressure, 101_325, 60, "1013.3 hPa ±0.6")]
    [InlineData(Quantity.FilterPressureDrop, 45.4, 2, "45 Pa across the filter ±2")]
    [InlineData(Quantity.ExhaustProof, 0, 0, "exhaust not proven")]
    public void Describe_NamesTheUnit(Quantity quantity, double value, double uncertainty, string text) =>
        Assert.Equal(text, SensorsCommand.Describe(new Sample(quantity, value, uncertainty), TemperatureUnit.Celsius));

    [Fact]
    public void Describe_InFahrenheit_ConvertsTheUncertaintyWithoutTheOffset() =>
        // 21 °C x 1.8 + 32; 0.1 °C x 1.8.
        Assert.Equal("69.80 °F ±0.18", SensorsCommand.Describe(new Sample(Quantity.PieceTemperature, 21, 0.1), TemperatureUnit.Fahrenheit));

    [Fact]
    public async Task Sensors_OfAShopThatReadsFahrenheit_AnswerInIt()
    {
        CommandResult result = await Sensors("""{ "booth": { "temperatureUnit": "F" } }""");

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains(" °F ±", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("°C", result.Out, StringComparison.Ordinal);
    }

    private async Task<CommandResult> Sensors(string config)
    {
        await File.WriteAllTextAsync(_path, config);
        return await CommandRun.With(["sensors", "--config", _path]);
    }
}
