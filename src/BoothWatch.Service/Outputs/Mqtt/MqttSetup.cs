using BoothWatch.Service.Coat;
using BoothWatch.Service.Outputs.Mqtt.Broker;
using BoothWatch.Service.Outputs.Pump;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Registers MQTT: the embedded broker, the connection, and the output that publishes over it.</summary>
public static class MqttSetup
{
    /// <summary>
    /// Adds MQTT, unless <c>mqtt:use</c> is off. Needs an <see cref="IVerdictChanges"/>; every <see cref="IMqttSubscriber"/> gets
    /// what it wishes, and every <see cref="IMqttCommand"/> the commands of its name.
    /// </summary>
    /// <param name="services">The services.</param>
    /// <param name="configuration">The configuration, only to see whether MQTT is off.</param>
    public static IServiceCollection AddMqtt(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddOptionsWithValidateOnStart<MqttOptions>().BindConfiguration(MqttOptions.Section);
        services.AddSingleton<IValidateOptions<MqttOptions>, MqttOptionsValidator>();
        if (configuration[$"{MqttOptions.Section}:use"] == MqttOptions.Off)
        {
            return services;
        }

        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(provider => new MqttTopics(
            provider.GetRequiredService<IOptions<MqttOptions>>().Value, provider.GetRequiredService<IOptions<BoothOptions>>().Value));
        services.AddSingleton<CommandIntake>();
        services.AddSingleton<IMqttSubscriber>(provider => provider.GetRequiredService<CommandIntake>());
        services.AddSingleton<VerdictChangePublisher>();

        // Hosted parts stop in reverse order: first the pump and the commands, then the connection, which says goodbye, then the broker.
        services.AddSingleton<EmbeddedBroker>();
        services.AddHostedService(provider => provider.GetRequiredService<EmbeddedBroker>());
        services.AddSingleton<MqttLink>();
        services.AddHostedService(provider => provider.GetRequiredService<MqttLink>());
        services.AddHostedService<CommandWork>();
        return services.AddOutput<MqttOutput>(pump =>
        {
            // Live state: only the newest assessment is worth publishing, and soon after the connection is back.
            pump.Capacity = 1;
            pump.NewestOnly = true;
            pump.MaxAttempts = 1000;
            pump.LongestRetry = TimeSpan.FromSeconds(2);
            pump.AttemptLimit = TimeSpan.FromMinutes(5);
            pump.FlushLimit = TimeSpan.FromSeconds(2);
        });
    }
}
