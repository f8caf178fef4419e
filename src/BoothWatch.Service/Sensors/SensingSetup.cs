using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.MqttAir;
using BoothWatch.Service.Sensors.TypedPiece;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Sensors;

/// <summary>Registers the sensors.</summary>
public static class SensingSetup
{
    /// <summary>Adds every configured <see cref="ISensor"/>, the buses and pins behind them, and the scripted shop that emulated ones measure.</summary>
    public static IServiceCollection AddSensing(this IServiceCollection services)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.AddOptionsWithValidateOnStart<SensorsOptions>().BindConfiguration(SensorsOptions.Section);
        services.AddOptionsWithValidateOnStart<DemoOptions>().BindConfiguration(DemoOptions.Section);
        services.AddSingleton<IValidateOptions<SensorsOptions>, SensorsOptionsValidator>();
        services.AddSingleton<IValidateOptions<DemoOptions>, DemoOptionsValidator>();

        services.AddSingleton<I2cBusSource>();
        services.AddSingleton<GpioSource>();
        services.AddSingleton<TypedPieceTemperature>();
        services.AddSingleton<AirMessages>();
        services.AddSingleton<ShopClock>();
        services.AddSingleton<ScriptedShop>();
        services.AddSingleton<DemoFault>();
        services.AddSingleton(provider => new EmulatedShop(
            provider.GetRequiredService<ScriptedShop>(),
            provider.GetRequiredService<DemoFault>(),
            provider.GetRequiredService<IOptions<DemoOptions>>().Value.Seed));
        services.AddSingleton<SensorWiring>();

        services.AddSingleton<SensorSet>();
        services.AddSingleton<IEnumerable<ISensor>>(provider => provider.GetRequiredService<SensorSet>());
        return services;
    }
}
