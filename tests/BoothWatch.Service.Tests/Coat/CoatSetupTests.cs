using BoothWatch.Film;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Coat;

public class CoatSetupTests
{
    [Fact]
    public void Plan_FollowsTheConfiguration()
    {
        using ServiceProvider services = Services(("coat:kind", "flash"), ("coat:cupMl", "100"), ("coat:loadedRetarderPct", "5"));

        CoatPlan plan = services.GetRequiredService<CoatPlan>();

        Assert.Equal((CoatKind.Flash, 100.0, 5.0), (plan.Kind, plan.CupMl, plan.LoadedRetarderPct));
    }

    [Fact]
    public void Plan_OfAWrongSection_IsRefusedWithEveryError()
    {
        using ServiceProvider services = Services(("coat:cupMl", "1"), ("coat:substrate", "glas"));

        OptionsValidationException refusal = Assert.Throws<OptionsValidationException>(services.GetRequiredService<CoatPlan>);

        Assert.Equal(2, refusal.Failures.Count());
    }

    [Theory]
    [InlineData("", 8.0, 8.0)] // the scripted shop has mixed its cup
    [InlineData("5", 8.0, 5.0)] // what the person has set comes first
    [InlineData("", null, null)]
    public void Cup_OfTheScriptedShop_CountsWhereTheConfigurationNamesNone(string configured, double? demo, double? expected)
    {
        using ServiceProvider services = Services(demo, ("coat:loadedRetarderPct", configured));

        Assert.Equal(expected, services.GetRequiredService<CoatPlan>().LoadedRetarderPct);
    }

    private static ServiceProvider Services(params (string Key, string Value)[] settings) => Services(null, settings);

    private static ServiceProvider Services(double? demoCup, params (string Key, string Value)[] settings)
    {
        IConfigurationRoot configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(s => KeyValuePair.Create<string, string?>(s.Key, s.Value)))
            .Build();
        var file = new ConfigurationFile(Path.Combine(RepositoryFile.Root, "config", "boothwatch.json"), configuration, []);
        return new ServiceCollection().AddSingleton<IConfiguration>(configuration).AddCoat(file, (_, coat) => coat with { LoadedRetarderPct = coat.LoadedRetarderPct ?? demoCup }).BuildServiceProvider();
    }
}
