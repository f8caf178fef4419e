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
    /// <param name="demoCoat">Fills in what the coat section leaves open by what the scripted shop says; the same outside a demo.</param>
    public static IServiceCollection AddCoat(this IServiceCollection services, ConfigurationFile file, Func<IServiceProvider, CoatOptions, CoatOptions> demoCoat)
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
                    demoCoat(provider, coat),
                    provider.GetRequiredService<MaterialCatalogue>());
            });
    }
}
