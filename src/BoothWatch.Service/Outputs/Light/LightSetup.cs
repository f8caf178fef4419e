using BoothWatch.Service.Sensors;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>Registers the booth light.</summary>
public static class LightSetup
{
    /// <summary>Adds <see cref="IVerdictLight"/> over the pins of <see cref="GpioSource"/>, which the sensors register.</summary>
    public static IServiceCollection AddLight(this IServiceCollection services)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton<GpioSource>();
        services.AddOptionsWithValidateOnStart<LightOptions>().BindConfiguration(LightOptions.Section);
        services.AddSingleton<IValidateOptions<LightOptions>, LightOptionsValidator>();
        services.AddSingleton(provider =>
        {
            LightOptions options = provider.GetRequiredService<IOptions<LightOptions>>().Value;
            GpioSource pins = provider.GetRequiredService<GpioSource>();
            SignalSource source = SignalSourceWord.Parse(options.Source) ?? SignalSource.Emulated;
            return new BoothLight(
                new LampPins(() => pins.Controller(source), options),
                options,
                provider.GetRequiredService<TimeProvider>(),
                provider.GetRequiredService<ILogger<BoothLight>>());
        });
        services.AddSingleton<IVerdictLight>(provider => provider.GetRequiredService<BoothLight>());
        return services;
    }
}
