using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.Email;
using BoothWatch.Service.Outputs.Alerts.Webhook;
using BoothWatch.Service.Outputs.Alerts.WebPush;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.TypedPiece;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Alerts;

/// <summary>Registers alerts.</summary>
public static class AlertsSetup
{
    /// <summary>Adds the rules, the outbox and every channel. Needs the journal, jobs, the sensors, the policy and MQTT, and comes before the assessment loop.</summary>
    public static IServiceCollection AddAlerts(this IServiceCollection services)
    {
        services.AddOptionsWithValidateOnStart<AlertsOptions>().BindConfiguration(AlertsOptions.Section);
        services.AddSingleton<IValidateOptions<AlertsOptions>, AlertsOptionsValidator>();
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton<IAlertJournal, AlertJournal>();
        services.AddSingleton<AlertStore>();
        services.AddSingleton<Outbox>();
        services.AddSingleton(SourcesOf);
        services.AddSingleton<AlertKeys>();
        services.AddSingleton<AcknowledgeTokens>();
        services.AddSingleton<AlertLinks>();
        services.AddSingleton<PhoneBook>();
        services.AddKeyedSingleton(typeof(AlertsSetup), (_, _) => HttpDelivery.Client());

        services.AddSingleton<IAlertChannel, WebPushChannel>();
        services.AddSingleton<IAlertChannel, EmailChannel>();
        services.AddSingleton<IAlertChannel>(provider => ActivatorUtilities.CreateInstance<WebhookChannel>(
            provider, provider.GetRequiredKeyedService<HttpClient>(typeof(AlertsSetup))));
        services.AddSingleton<IAlertChannel, MqttAlertChannel>();
        services.AddSingleton<IMqttCommand, AcknowledgeCommand>();

        services.AddSingleton<AlertDesk>().AddHostedService(provider => provider.GetRequiredService<AlertDesk>());
        services.AddSingleton<JobsToWatch>().AddHostedService(provider => provider.GetRequiredService<JobsToWatch>());
        services.AddSingleton(provider => new AlertDispatcher(
            provider.GetRequiredService<Outbox>(),
            provider.GetServices<IAlertChannel>(),
            provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<ILogger<AlertDispatcher>>()));
        services.AddHostedService(provider => provider.GetRequiredService<AlertDispatcher>());
        services.AddSingleton<AlertEndpoints>();
        return services.AddOutput<AlertOutput>(Queue);
    }

    /// <summary>
    /// How alerts are queued: only the newest assessment counts. After an outage of the journal the ones before it are the past, and what
    /// they say would be told as if it were so now.
    /// </summary>
    internal static void Queue(OutputPumpOptions pump)
    {
        (pump.Capacity, pump.NewestOnly) = (1, true);

        // Whatever fails here fails for every assessment (disk, lock); each is a second's look, and none is worth much by itself.
        pump.MaxAttempts = 1000;
        pump.LongestRetry = TimeSpan.FromSeconds(5);
    }

    private static AlertSources SourcesOf(IServiceProvider services)
    {
        BoothOptions booth = services.GetRequiredService<IOptions<BoothOptions>>().Value;
        bool typed = services.GetServices<ISensor>().OfType<TypedPieceSensor>().Any();
        PolicyInForce policy = services.GetRequiredService<PolicyInForce>();
        JobsToWatch jobs = services.GetRequiredService<JobsToWatch>();
        return new AlertSources
        {
            Shop = booth.Shop,
            Booth = booth.Name,
            Limits = AlertLimitsReader.Of(
                services.GetRequiredService<IOptions<AlertsOptions>>().Value, policy.Configured, typed ? [Quantity.PieceTemperature] : []),
            PolicyNow = () => policy.Current,
            Folder = Path.GetDirectoryName(services.GetRequiredService<JournalLocation>().Path)!,
            Jobs = () => jobs.Jobs,
        };
    }
}
