using BoothWatch.Service.Advice;

namespace BoothWatch.Service.Tests.Advice;

public class MeasureTests
{
    [Theory]
    // Definitions of the scales: 0 °C = 32 °F = 273.15 K; NIST SP 811 (2008), section 4.2.1.1 and appendix B.8.
    [InlineData("24", 24)]
    [InlineData("24C", 24)]
    [InlineData("24 °C", 24)]
    [InlineData("75.2F", 24)]
    [InlineData("75.2 °f", 24)]
    [InlineData("297.15K", 24)]
    [InlineData("-5", -5)]
    [InlineData("−5C", -5)]
    [InlineData("+5.5C", 5.5)]
    [InlineData("2.4e1", 24)]
    [InlineData(".5", 0.5)]
    public void Temperature_WithAndWithoutUnit_IsCelsius(string text, double celsius) => Reads(Measures.Temperature, text, celsius, 1e-9);

    [Theory]
    // One standard atmosphere is 101 325 Pa by definition: 760 mmHg, 29.9213 inHg (NIST SP 811, appendix B.8).
    [InlineData("1013.25", 101_325)]
    [InlineData("101325", 101_325)]
    [InlineData("1013.25hPa", 101_325)]
    [InlineData("1013.25 mbar", 101_325)]
    [InlineData("101.325kPa", 101_325)]
    [InlineData("101325 Pa", 101_325)]
    [InlineData("1.01325bar", 101_325)]
    [InlineData("29.9213inHg", 101_325)]
    [InlineData("760mmHg", 101_325)]
    public void Pressure_OfOneAtmosphere_IsTheSameInEveryUnit(string text, double pascal) => Reads(Measures.Pressure, text, pascal, 0.5);

    [Theory]
    // 1 mil = 25.4 µm exactly (NIST SP 811, appendix B.8).
    [InlineData("75", 75)]
    [InlineData("75um", 75)]
    [InlineData("75 µm", 75)]
    [InlineData("75 μm", 75)]
    [InlineData("0.075mm", 75)]
    [InlineData("3mil", 76.2)]
    public void WetFilm_WithAndWithoutUnit_IsMicrometres(string text, double micrometres) => Reads(Measures.WetFilm, text, micrometres, 1e-9);

    [Theory]
    // 1 ft/min = 5.08e-3 m/s exactly (NIST SP 811, appendix B.8).
    [InlineData("0.5", 0.5)]
    [InlineData("0.5m/s", 0.5)]
    [InlineData("100fpm", 0.508)]
    [InlineData("100 ft/min", 0.508)]
    public void AirSpeed_WithAndWithoutUnit_IsMetresPerSecond(string text, double metresPerSecond) => Reads(Measures.AirSpeed, text, metresPerSecond, 1e-9);

    [Theory]
    [InlineData("55", 55)]
    [InlineData("55%", 55)]
    [InlineData("55 %RH", 55)]
    public void Humidity_WithAndWithoutSign_IsPercent(string text, double percent) => Reads(Measures.Humidity, text, percent, 0);

    [Fact]
    public void TemperatureTolerance_InFahrenheit_IsADifferenceWithoutOffset() => Reads(Measures.TemperatureTolerance, "1.8F", 1, 1e-9);

    [Theory]
    [InlineData("warm", "not a number")]
    [InlineData("24,5", "not a comma")]
    [InlineData("24R", "'R' is not a unit")]
    [InlineData("24 C C", "not a number")]
    [InlineData("56", "out of range")]
    [InlineData("-16", "out of range")]
    [InlineData("NaN", "not a number")]
    [InlineData("1e999", "out of range")]
    public void Temperature_ThatIsWrong_IsRefusedWithTheProblem(string text, string problem)
    {
        Assert.False(Measures.Temperature.TryRead(text, out _, out string? found));
        Assert.Contains(problem, found, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryArgument_HasAnExampleThatItAccepts()
    {
        foreach (AdviseArgument argument in AdviseArguments.All.Where(a => a.Measure is not null))
        {
            Assert.True(argument.Measure!.TryRead(argument.Example, out _, out string? problem), $"{argument.Name}: {problem}");
        }
    }

    private static void Reads(Measure measure, string text, double expected, double tolerance)
    {
        Assert.True(measure.TryRead(text, out double value, out string? problem), problem);
        Assert.InRange(value, expected - tolerance, expected + tolerance);
    }
}
