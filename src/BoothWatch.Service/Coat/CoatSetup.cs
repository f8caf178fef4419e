using BoothWatch.Film;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Materials;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Coat;

/// <summary>Registers the booth, the materials and the coat in hand.</summary>
public static class CoatSetup
{
    /// <summary>Adds <see cref="BoothOptions"/>, <see cref="CoatOptions"/>, the <see cref="MaterialCatalogue"/> and the <see cref="CoatPlan"/>.</summary>
    /// <param name="services">The container.</param>
    /// <param name="file">The configuration file; its folder holds the materials.</param>
    /// <param name="demoCup">Retarder in the cup of the scripted shop, %, where the coat section names none; null outside a demo.</param>
    public static IServiceCollection AddCoat(this IServiceCollection services, ConfigurationFile file, Func<IServiceProvider, double?> demoCup)
    {
        ArgumentNullException.ThrowIfNull(file);
        services.AddOptionsWithValidateOnStart<BoothOptions>().BindConfiguration(BoothOptions.Section);
        services.AddOptionsWithValidateOnStart<CoatOptions>().BindConfiguration(CoatOptions.Section);
        return services
            .AddSingleton<IValidateOptions<BoothOptions>, BoothOptionsValidator>()
            .AddSingleton<IValidateOptions<CoatOptions>, CoatOptionsValidator>()
            .AddSingleton(_ => MaterialsLoader.Load(file.MaterialsFolder))
            .AddSingleton(provider =>
            {
                CoatOptions coat = provider.GetRequiredService<IOptions<CoatOptions>>().Value;
                return CoatPlanner.Plan(
                    coat with { LoadedRetarderPct = coat.LoadedRetarderPct ?? demoCup(provider) },
                    provider.GetRequiredService<MaterialCatalogue>());
            });
    }
}
