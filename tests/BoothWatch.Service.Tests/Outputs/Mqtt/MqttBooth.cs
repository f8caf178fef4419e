using System.Globalization;
using BoothWatch.Service.Alerts;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>The MQTT part of the service with a real journal, as the host puts it together.</summary>
internal sealed class MqttBooth : IAsyncDisposable
{
    private readonly IHost _host;
    private readonly SeriesOutput _series;

    private MqttBooth(IHost host, SeriesOutput series, LogLines log) => (_host, _series, Log) = (host, series, log);

    public LogLines Log { get; }

    public MqttTopics Topics => _host.Services.GetRequiredService<MqttTopics>();

    public int Connections => _host.Services.GetRequiredService<MqttLink>().Connections;

    public OutputHealth Health => _host.Services.GetRequiredService<AssessmentFanOut>().Health.Single();

    public T Get<T>()
        where T : notnull => _host.Services.GetRequiredService<T>();

    /// <summary>A booth with its broker inside, on a free port.</summary>
    public static Task<MqttBooth> EmbeddedAsync(JournalFolder folder, int port, params (string Key, string Value)[] settings) =>
        StartAsync(folder, null, [("broker:port", port.ToString(CultureInfo.InvariantCulture)), .. settings]);

    /// <summary>A booth that publishes to another broker.</summary>
    public static Task<MqttBooth> ExternalAsync(JournalFolder folder, int port, params (string Key, string Value)[] settings) =>
        StartAsync(folder, null, [("use", "external"), ("host", "127.0.0.1"), ("port", port.ToString(CultureInfo.InvariantCulture)), .. settings]);

    public static async Task<MqttBooth> StartAsync(JournalFolder folder, Action<IServiceCollection>? more, params (string Key, string Value)[] settings)
    {
        HostApplicationBuilder builder = Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings());
        (string Key, string Value)[] quick = [("firstRetryS", "0.1"), ("longestRetryS", "0.5"), .. settings];
        builder.Configuration.AddInMemoryCollection(
            quick.GroupBy(s => s.Key).Select(s => new KeyValuePair<string, string?>($"mqtt:{s.Key}", s.Last().Value)));
        builder.Services.AddLogging();
        LogLines log = new();
        builder.Services.AddSingleton<ILoggerProvider>(log);
        builder.Services.AddSingleton<IVerdictChanges>(new JournalVerdictChanges(folder.Query, folder.Location));
        more?.Invoke(builder.Services);
        builder.Services.AddMqtt(builder.Configuration);
        IHost host = builder.Build();
        await host.StartAsync();
        return new MqttBooth(host, new SeriesOutput(folder.Journal(), new SeriesOptions(), TimeProvider.System), log);
    }

    /// <summary>One tick: journals the assessment, and hands it to MQTT as the loop does.</summary>
    public void Tick(Assessment assessment)
    {
        Journal(assessment);
        Post(assessment);
    }

    public void Journal(Assessment assessment) => _series.Write(assessment);

    public void Post(Assessment assessment) => _host.Services.GetRequiredService<AssessmentFanOut>().Post(assessment);

    /// <summary>Hands an assessment over and waits until it, and all before it, is published.</summary>
    public async Task PublishAsync(Assessment assessment)
    {
        Tick(assessment);
        await Eventually.TrueAsync(() => ReferenceEquals(Get<MqttOutput>().Published, assessment), "the assessment is published");
    }

    /// <summary>Sends an alert as the service does.</summary>
    public Task SendAlertAsync()
    {
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        AlertMessage message = new()
        {
            Id = AlertIds.New(now),
            Alert = AlertIds.New(now),
            Type = AlertMessageType.Alert,
            Kind = BoothWatch.Alerts.AlertKind.VerdictWorse,
            Key = "verdict",
            Level = BoothWatch.Alerts.AlertLevel.Urgent,
            Shop = "Harbour Lane",
            Booth = "corner",
            Title = "Wait",
            Finding = "dew point 17.8 °C, 0.6 °C over what this mix holds",
            Action = "wait",
            Began = now,
            Time = now,
            Expires = now.AddMinutes(10),
        };
        return new MqttAlertChannel(_host.Services, Options.Create(new AlertsOptions()), Get<IOptions<MqttOptions>>(), TimeProvider.System)
            .SendAsync("", message, CancellationToken.None);
    }

    public async ValueTask DisposeAsync()
    {
        await _host.StopAsync();
        _host.Dispose();
    }
}
