using BoothWatch.Service.Limits;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Limits;

public sealed class LimitOptionsTests
{
    [Fact]
    public void Defaults_AreValidAndOff()
    {
        Assert.True(Validate(new LimitOptions()).Succeeded);
        Assert.False(new LimitOptions().Enabled);
    }

    [Fact]
    public void Mistakes_AreAllNamedWithKeyValueRangeAndExample() => Assert.Equal(
        [
            "limit:floorC is 0.6; give a number from 0 to 0.5 (°C, at most verdict:requiredMarginC), for example 0.2",
            "limit:ceilingC is 0.4; give a number from 0.5 to 10 (°C, at least verdict:requiredMarginC), for example 3",
            "limit:leastCoats is 9; give a number from 10 to 1000 (coats), for example 20",
            "limit:leastCloseDays is 1; give a number from 2 to 100 (days), for example 5",
            "limit:leastJudgedPct is NaN; give a number from 10 to 100 (%), for example 50",
            "limit:leastBlushed is 1; give a number from 2 to 20 (coats), for example 2",
            "limit:windowDays is 3661; give a number from 30 to 3660 (days), for example 365",
            "limit:since is \"31.3.2026\"; give a day as yyyy-MM-dd, for example 2026-03-31, or leave it empty",
        ],
        Validate(new LimitOptions
        {
            FloorC = 0.6,
            CeilingC = 0.4,
            LeastCoats = 9,
            LeastCloseDays = 1,
            LeastJudgedPct = double.NaN,
            LeastBlushed = 1,
            WindowDays = 3661,
            Since = "31.3.2026",
        }).Failures);

    [Fact]
    public void FloorAndCeiling_EncloseTheRequiredMarginOfTheSettings()
    {
        Assert.True(Validate(new LimitOptions { FloorC = 1.4 }, requiredMarginC: "1.5").Succeeded);
        Assert.Equal(
            ["limit:ceilingC is 3; give a number from 3.5 to 10 (°C, at least verdict:requiredMarginC), for example 3.5"],
            Validate(new LimitOptions(), requiredMarginC: "3.5").Failures);
    }

    private static ValidateOptionsResult Validate(LimitOptions options, string requiredMarginC = "0.5") =>
        new LimitOptionsValidator(new ConfigurationBuilder().AddInMemoryCollection([new("verdict:requiredMarginC", requiredMarginC)]).Build()).Validate(null, options);
}
