using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Verdicts;

public class PolicyCheckTests
{
    [Fact]
    public void Errors_Defaults_AreNone() => Assert.Empty(PolicyCheck.Errors(new VerdictPolicy()));

    [Fact]
    public void Errors_SeveralWrong_AreAllReportedWithKeyValueRangeAndFix()
    {
        VerdictPolicy policy = new() { RequiredMarginC = 11, DewClearanceC = 2.9, DwellS = double.NaN };
        Assert.Equal(
            [
                "verdict:requiredMarginC is 11; give a number from 0 to 10 (°C), for example 0.5",
                "verdict:dewClearanceC is 2.9; give a number from 3 to 10 (°C), for example 3",
                "verdict:dwellS is NaN; give a number from 1 to 900 (s), for example 30",
            ],
            PolicyCheck.Errors(policy).AsEnumerable());
    }

    [Fact]
    public void Errors_TemperaturesOutOfOrder_NameBothKeys() => Assert.Equal(
        ["verdict:slowDownAboveTemperatureC is 20; give a number above verdict:slowDownBelowTemperatureC, which is 20"],
        PolicyCheck.Errors(new VerdictPolicy { SlowDownAboveTemperatureC = 20, SlowDownBelowTemperatureC = 20 }).AsEnumerable());

    [Fact]
    public void Policy_SpeakingInNoUnit_IsRefused() => Assert.Contains(
        "Give Celsius or Fahrenheit",
        Assert.Throws<ArgumentOutOfRangeException>(() => new VerdictPolicy().SpeakingIn((TemperatureUnit)7)).Message,
        StringComparison.Ordinal);

    [Fact]
    public void Policy_EveryNumber_HasAUnitARangeWithItsDefaultAndASource()
    {
        (string Key, double Default, PolicyLimitAttribute Limit)[] limits = [.. PolicyCheck.Limits()];
        Assert.Equal(typeof(VerdictPolicy).GetProperties().Count(property => property.PropertyType == typeof(double)), limits.Length);
        Assert.All(limits, limit =>
        {
            Assert.InRange(limit.Default, limit.Limit.Least, limit.Limit.Most);
            Assert.NotEmpty(limit.Limit.Unit);
            Assert.NotEmpty(limit.Limit.Source);
        });
    }
}
