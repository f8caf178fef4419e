using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Tests.Film;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Jobs;

/// <summary>That cold air, much retarder and a heavy film dry slower is common practice, no source; by how much is the model's word.</summary>
public class DryingDelayTests
{
    private static readonly DryingCase Reference = Case(21, 50, 0);

    [Fact]
    public void Delay_InTheReferenceAir_IsNone()
    {
        DryingDelay delay = DryingDelay.Between(Reference, Reference);
        Assert.Equal(1, delay.Factor);
        Assert.Empty(delay.Causes);
        Assert.Empty(delay.Words());
    }

    [Fact]
    public void Delay_InColdAir_NamesTheCold()
    {
        DryingDelay delay = DryingDelay.Between(Case(12, 50, 0), Reference);
        Assert.InRange(delay.Factor!.Value, 1.2, 4);
        Assert.StartsWith("air of 12.0 °C", delay.Causes[0].What, StringComparison.Ordinal);
        delay = DryingDelay.Between(Case(12, 50, 0), Reference, text: new TemperatureText(TemperatureUnit.Fahrenheit));
        Assert.StartsWith("air of 53.6 °F", delay.Causes[0].What, StringComparison.Ordinal);
        Assert.Contains("times as long as planned", delay.Words(), StringComparison.Ordinal);
    }

    /// <summary>12 °C are 53.6 °F.</summary>
    [Fact]
    public void Delay_InAShopThatReadsFahrenheit_NamesTheColdInIt()
    {
        DryingDelay delay = DryingDelay.Between(Case(12, 50, 0), Reference, text: new TemperatureText(TemperatureUnit.Fahrenheit));
        Assert.StartsWith("air of 53.6 °F and a piece of 53.6 °F", delay.Causes[0].What, StringComparison.Ordinal);
        Assert.DoesNotContain("°C", delay.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void Delay_WithMuchRetarder_NamesTheRetarder()
    {
        DryingDelay delay = DryingDelay.Between(Case(21, 50, 15), Reference);
        Assert.InRange(delay.Factor!.Value, 1.3, 20);
        Assert.Equal("15 % of retarder", delay.Causes[0].What);
    }

    [Fact]
    public void Delay_InWarmDryAir_ShortensNoWait() =>
        Assert.Equal(1, DryingDelay.Between(Case(30, 30, 0), Reference).Factor);

    [Fact]
    public void Delay_TheColder_TheLonger()
    {
        double[] factors = [.. new[] { 20, 17, 14, 11, 8 }.Select(c => DryingDelay.Between(Case(c, 50, 5), Reference).Factor!.Value)];
        Assert.Equal(factors.Order(), factors);
    }

    [Fact]
    public void Delay_OfAFilmThatDoesNotSet_HasNoFactor()
    {
        FilmParameters impatient = FilmParameters.Default with { LongestRunS = 60 };
        DryingDelay delay = DryingDelay.Between(Case(5, 50, 15), Reference with { Conditions = Reference.Conditions with { WetFilmUm = 20 } }, impatient);
        Assert.Null(delay.Factor);
        Assert.StartsWith("this film does not set in this air", delay.Words(), StringComparison.Ordinal);
    }

    private static DryingCase Case(double airC, double humidityPct, double retarderPct)
    {
        CoatConditions conditions = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Unthinned, retarderPct), airC, pieceC: airC);
        return new DryingCase(conditions, TestCoat.VapourPressurePa(airC, humidityPct), humidityPct, retarderPct);
    }
}
