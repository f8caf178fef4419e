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

    private static ServiceProvider Services(params (string Key, string Value)[] settings)
    {
        IConfigurationRoot configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(s => KeyValuePair.Create<string, string?>(s.Key, s.Value)))
            .Build();
        var file = new ConfigurationFile(Path.Combine(RepositoryFile.Root, "config", "boothwatch.json"), configuration, []);
        return new ServiceCollection().AddSingleton<IConfiguration>(configuration).AddCoat(file).BuildServiceProvider();
    }
}
