using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Page;

public sealed class DegreeTextTests
{
    private static readonly DegreeText C = new(TemperatureUnit.Celsius);
    private static readonly DegreeText F = new(TemperatureUnit.Fahrenheit);

    [Theory]
    [InlineData(0.0, "0.0 °C", "32.0 °F")] // by definition of the Fahrenheit scale
    [InlineData(100.0, "100.0 °C", "212.0 °F")]
    [InlineData(-40.0, "−40.0 °C", "−40.0 °F")]
    [InlineData(-0.04, "0.0 °C", "31.9 °F")]
    [InlineData(null, "–", "–")]
    [InlineData(double.NaN, "–", "–")]
    public void Temperature_InEachUnit(double? value, string celsius, string fahrenheit)
    {
        Assert.Equal(celsius, Plain(C.Temperature(value)));
        Assert.Equal(fahrenheit, Plain(F.Temperature(value)));
    }

    [Theory]
    [InlineData(1.0, "+1.0 °C", "+1.8 °F")]
    [InlineData(-2.5, "−2.5 °C", "−4.5 °F")]
    [InlineData(0.01, "0.0 °C", "0.0 °F")]
    [InlineData(null, "–", "–")]
    public void Difference_HasASignAndNoOffset(double? value, string celsius, string fahrenheit)
    {
        Assert.Equal(celsius, Plain(C.Difference(value)));
        Assert.Equal(fahrenheit, Plain(F.Difference(value)));
    }

    [Fact]
    public void Uncertainty_HasNoOffset() => Assert.Equal("± 1.8 °F", Plain(F.Uncertainty(1)));

    [Theory]
    [InlineData("dew point 17.8 °C, 0.6 °C over", "dew point 17.8\u00a0°C, 0.6\u00a0°C over")]
    [InlineData("raise retarder to 9 % or wait", "raise retarder to 9\u00a0% or wait")]
    [InlineData("drop 138 Pa", "drop 138\u00a0Pa")]
    [InlineData("2 sensors disagree", "2 sensors disagree")]
    public void Tie_KeepsNumberAndUnitTogether(string text, string tied) => Assert.Equal(tied, DegreeText.Tie(text));

    private static string Plain(string text) => text.Replace('\u00a0', ' ');
}
