using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts.Rules;

/// <summary>Too dry, too hot, too cold. Limits: see <see cref="VerdictPolicy"/>; 30 %RH after NFPA 77:2000 6.4.2.1, the rest common practice, no source.</summary>
public class AirRuleTests
{
    [Theory]
    [InlineData(12, Verdict.SlowDown)]
    [InlineData(29.9, Verdict.SlowDown)]
    [InlineData(30.0, Verdict.Spray)]
    [InlineData(30.1, Verdict.Spray)]
    [InlineData(95, Verdict.Spray)]
    public void TooDry_AtEachEdge_Limits(double humidityPct, Verdict expected) =>
        Assert.Equal(expected, RuleCheck.Limit(new AirTooDry(), GoodBooth.Evidence(air: GoodBooth.Air(humidityPct: humidityPct))));

    [Theory]
    [InlineData(22, Verdict.Spray)]
    [InlineData(30.0, Verdict.Spray)]
    [InlineData(30.1, Verdict.SlowDown)]
    [InlineData(35.0, Verdict.SlowDown)]
    [InlineData(35.1, Verdict.Wait)]
    public void TooHot_AtEachEdge_Limits(double temperatureC, Verdict expected) =>
        Assert.Equal(expected, RuleCheck.Limit(new AirTooHot(), GoodBooth.Evidence(air: GoodBooth.Air(temperatureC))));

    [Theory]
    [InlineData(22, Verdict.Spray)]
    [InlineData(15.0, Verdict.Spray)]
    [InlineData(14.9, Verdict.SlowDown)]
    [InlineData(10.0, Verdict.SlowDown)]
    [InlineData(9.9, Verdict.Wait)]
    [InlineData(-5, Verdict.Wait)]
    public void TooCold_AtEachEdge_Limits(double temperatureC, Verdict expected) =>
        Assert.Equal(expected, RuleCheck.Limit(new AirTooCold(), GoodBooth.Evidence(air: GoodBooth.Air(temperatureC))));

    [Fact]
    public void AirRules_OwnLimits_AreUsed()
    {
        VerdictPolicy policy = new() { SlowDownBelowHumidityPct = 40, SlowDownAboveTemperatureC = 21, SlowDownBelowTemperatureC = 23 };
        Evidence evidence = GoodBooth.Evidence(air: GoodBooth.Air(22, 39), policy: policy);
        Assert.Equal(Verdict.SlowDown, RuleCheck.Limit(new AirTooDry(), evidence));
        Assert.Equal(Verdict.SlowDown, RuleCheck.Limit(new AirTooHot(), evidence));
        Assert.Equal(Verdict.SlowDown, RuleCheck.Limit(new AirTooCold(), evidence));
    }

    [Fact]
    public void TooHot_Reason_CarriesNumberLimitAndAction() => Assert.Equal(
        "air 36.2 °C, over 35.0 °C: wait for a cooler hour",
        RuleCheck.Of(new AirTooHot(), GoodBooth.Evidence(air: GoodBooth.Air(36.2)))?.ToString());

    [Fact]
    public void TooDry_Reason_CarriesNumberLimitAndAction() => Assert.Equal(
        "humidity 22.4 %, under 30 %, so static and dry spray: ground the piece and the gun, wipe off dust, lay the coat wet",
        RuleCheck.Of(new AirTooDry(), GoodBooth.Evidence(air: GoodBooth.Air(humidityPct: 22.4)))?.ToString());

    [Fact]
    public void TooCold_InFahrenheit_SpeaksFahrenheit() => Assert.Equal(
        "air 53.6 °F, under 59.0 °F: lay thin coats and leave longer between them",
        RuleCheck.Of(
            new AirTooCold(),
            GoodBooth.Evidence(air: GoodBooth.Air(12), policy: new VerdictPolicy().SpeakingIn(TemperatureUnit.Fahrenheit)))?.ToString());
}
