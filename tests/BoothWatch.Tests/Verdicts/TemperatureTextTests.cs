using System.Globalization;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Verdicts;

public class TemperatureTextTests
{
    // Fixed points of both scales: ice 0 °C = 32 °F, steam 100 °C = 212 °F, and -40 is the same on both.
    [Theory]
    [InlineData(0, "0.0 °C", "32.0 °F")]
    [InlineData(100, "100.0 °C", "212.0 °F")]
    [InlineData(-40, "-40.0 °C", "-40.0 °F")]
    [InlineData(17.84, "17.8 °C", "64.1 °F")]
    [InlineData(-0.04, "0.0 °C", "31.9 °F")]
    public void Of_FixedPoints_ReadOnBothScales(double celsius, string inCelsius, string inFahrenheit)
    {
        Assert.Equal(inCelsius, new TemperatureText(TemperatureUnit.Celsius).Of(celsius));
        Assert.Equal(inFahrenheit, new TemperatureText(TemperatureUnit.Fahrenheit).Of(celsius));
    }

    [Theory]
    [InlineData(-0.6, "0.6 °C", "1.1 °F")]
    [InlineData(5, "5.0 °C", "9.0 °F")]
    [InlineData(0.05, "0.1 °C", "0.1 °F")]
    [InlineData(0.02, "less than 0.1 °C", "less than 0.1 °F")]
    [InlineData(0, "less than 0.1 °C", "less than 0.1 °F")]
    public void By_Differences_HaveNoSignAndNoOffset(double differenceC, string inCelsius, string inFahrenheit)
    {
        Assert.Equal(inCelsius, new TemperatureText(TemperatureUnit.Celsius).By(differenceC));
        Assert.Equal(inFahrenheit, new TemperatureText(TemperatureUnit.Fahrenheit).By(differenceC));
    }

    [Fact]
    public void Of_AnyCulture_WritesADecimalPoint()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            CultureInfo.CurrentCulture = comma;
            Assert.Equal("17.8 °C", new TemperatureText(TemperatureUnit.Celsius).Of(17.8));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
