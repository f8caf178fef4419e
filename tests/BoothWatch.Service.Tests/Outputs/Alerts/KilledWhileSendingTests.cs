using System.Diagnostics;
using System.Text.Json;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Tests.Outputs.Mqtt;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>Kills a process that keeps and sends alerts with SIGKILL, and looks at what arrived.</summary>
public sealed class KilledWhileSendingTests
{
    private const int Kills = 3;

    [Fact]
    public async Task Alerts_WhoseSenderIsKilled_AllArriveAndNoneMoreThanOnceAgainAKill()
    {
        using JournalFolder folder = new();
        await using Receiver receiver = await Receiver.StartAsync();
        Random random = new(20261125);
        HashSet<string> kept = [];
        for (int kill = 0; kill < Kills; kill++)
        {
            kept.UnionWith(await SendUntilKilledAsync(folder.Location.Path, receiver.Url + "/hook", TimeSpan.FromMilliseconds(random.Next(200, 900))));
        }

        Assert.True(kept.Count > 10, $"only {kept.Count} alerts were kept: the kills proved little");

        // A last run that is not killed hands over what is left.
        BoothWatch.Service.Alerts.AlertJournal journal = new(folder.Journal(), folder.Location);
        AlertSources sources = new() { Shop = "Harbour Lane", Booth = "corner", Limits = new(), Folder = folder.Folder };
        IOptions<AlertsOptions> options = Options.Create(new AlertsOptions { Webhook = { Url = receiver.Url + "/hook", Secret = AlertSender.Secret } });
        using HttpClient http = HttpDelivery.Client();
        BoothWatch.Service.Outputs.Alerts.Webhook.WebhookChannel channel = new(
            http, new AlertLinks(new AcknowledgeTokens(new AlertKeys(options, sources)), options), options, TimeProvider.System);
        Outbox outbox = new(journal);
        using (AlertDispatcher dispatcher = new(outbox, [channel], TimeProvider.System, NullLogger<AlertDispatcher>.Instance))
        {
            await dispatcher.StartAsync(CancellationToken.None);
            await Eventually.TrueAsync(() => outbox.RecordOf("webhook").Waiting == 0, "nothing waits");
            await dispatcher.StopAsync(CancellationToken.None);
        }

        var arrived = receiver.Letters
            .Select(letter => (Id: letter["webhook-id"], Title: JsonDocument.Parse(letter.Body).RootElement.GetProperty("data").GetProperty("title").GetString()!))
            .ToLookup(letter => letter.Title, letter => letter.Id);
        Assert.All(kept, key => Assert.Single(arrived[key].Distinct()));

        // One row is on its way at a time, so a kill can make at most one message come again.
        Assert.InRange(arrived.Sum(letter => letter.Count() - 1), 0, Kills);
    }

    private static async Task<IEnumerable<string>> SendUntilKilledAsync(string path, string url, TimeSpan after)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet")
        {
            ArgumentList = { typeof(AlertSender).Assembly.Location, AlertSender.Command, path, url },
            RedirectStandardOutput = true,
        };
        using Process sender = Process.Start(start)!;
        try
        {
            string? line = await sender.StandardOutput.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(120));
            Assert.NotNull(line);
            Task<string> rest = sender.StandardOutput.ReadToEndAsync();
            await Task.Delay(after, TimeProvider.System);
            Assert.False(sender.HasExited, "the sender ended by itself");
            sender.Kill();
            await sender.WaitForExitAsync();

            // The last line may be cut: only whole lines are acknowledgements.
            string all = line + "\n" + await rest;
            return all[..all.LastIndexOf('\n')].Split('\n');
        }
        finally
        {
            if (!sender.HasExited)
            {
                sender.Kill();
            }
        }
    }
}
