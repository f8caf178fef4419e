using BoothWatch.Service.Checks;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Checks;

public class ChecksOptionsTests
{
    [Fact]
    public void Validate_TheDefaults_AreGood() => Assert.True(new ChecksOptionsValidator().Validate(null, new ChecksOptions()).Succeeded);

    [Fact]
    public void Validate_SteadyForLongerThanInTheJar_NamesBoth() =>
        Assert.Contains("jarSteadyMinutes is 60, longer than checks:jarHours (0.5)", new ChecksOptionsValidator().Validate(null, new ChecksOptions { JarHours = 0.5, JarSteadyMinutes = 60 }).FailureMessage, StringComparison.Ordinal);

    [Fact]
    public void Validate_EverythingWrong_NamesEachWithItsRangeAndAnExample()
    {
        ValidateOptionsResult result = new ChecksOptionsValidator().Validate(null, new ChecksOptions
        {
            IntervalMonths = 0,
            JarHours = 0.1,
            JarSteadyMinutes = 1,
            JarHumidityChangePct = 5,
            JarTemperatureChangeC = double.NaN,
            GradientC = 0,
            BackSteadyMinutes = 0,
            BackHumidityChangePct = 50,
        });
        Assert.Equal(8, result.Failures!.Count());
        Assert.Contains("checks:intervalMonths is 0; give a number from 1 to 24 (months), for example 6", result.Failures!);
        Assert.Contains("checks:jarTemperatureChangeC is NaN; give a number from 0.1 to 1 (°C), for example 0.3", result.Failures!);
    }
}
