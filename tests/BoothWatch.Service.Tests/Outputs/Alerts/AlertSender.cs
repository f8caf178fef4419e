using System.Globalization;
using BoothWatch.Alerts;
using BoothWatch.Service.Alerts;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.Webhook;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>The process that the kill test kills: keeps alerts without pause, prints each that is on the disk, and sends them meanwhile.</summary>
internal static class AlertSender
{
    public const string Command = "send-alerts";
    public const string Secret = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";

    public static async Task<int> Run(string path, string url)
    {
        JournalLocation location = new(path, IsDemo: false);
        using var journal = new Journal(location, TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        AlertSources sources = new() { Shop = "Harbour Lane", Booth = "corner", Limits = new AlertLimits(), Folder = Path.GetDirectoryName(path)! };
        AlertJournal alerts = new(journal, location);
        IOptions<AlertsOptions> options = Options.Create(new AlertsOptions { Webhook = { Url = url, Secret = Secret } });
        using HttpClient http = HttpDelivery.Client();
        WebhookChannel channel = new(http, new AlertLinks(new AcknowledgeTokens(new AlertKeys(options, sources)), options), options, TimeProvider.System);
        using AlertDispatcher dispatcher = new(new Outbox(alerts), [channel], TimeProvider.System, NullLogger<AlertDispatcher>.Instance);
        await dispatcher.StartAsync(CancellationToken.None);
        AlertStore store = new(alerts, sources);
        await using var acknowledged = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true };
        for (int i = 0; ; i++)
        {
            string key = string.Create(CultureInfo.InvariantCulture, $"timer:{Environment.ProcessId}:{i}");
            Episode episode = new(key, AlertKind.TimerDue, AlertLevel.Notice, TimeProvider.System.GetUtcNow(), key, "f", "a");
            store.Enter(
                [new(EpisodeStep.Began, episode, key, "f", "a"), new(EpisodeStep.Told, episode with { IsTold = true }, key, "f", "a")],
                TimeProvider.System.GetUtcNow(),
                [(channel.Name, "")]);
            dispatcher.Wake();
            await acknowledged.WriteLineAsync(key);
        }
    }
}
