using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Text.Json;
using BoothWatch.Alerts;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Readings;
using BoothWatch.Service;
using BoothWatch.Service.Alerts;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.Webhook;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Benchmarks.Alerts;

/// <summary>
/// How long an alert takes to the receiver of a webhook on loopback. First many alerts through pump, rules, journal on the disk and
/// dispatcher; then the whole service over the hours of the shop day in which the verdict turns, from the age of the oldest reading on.
/// Fails above 2 s.
/// </summary>
internal static class AlertLatency
{
    private const int Alerts = 200;
    private const double BoundS = 2;
    private const string Secret = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    public static async Task<int> RunAsync(TextWriter output)
    {
        ConcurrentQueue<(string Title, string Type, DateTimeOffset At)> arrived = [];
        await using WebApplication receiver = await ReceiveAsync(arrived);
        string url = receiver.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single() + "/hook";
        double many = await ManyAsync(url, arrived, output);
        arrived.Clear();
        double day = await DayAsync(url, arrived, output);
        await receiver.StopAsync();
        double worst = Math.Max(many, day);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"longest {worst:0.000} s, bound {BoundS} s"));
        return worst < BoundS ? 0 : 1;
    }

    private static async Task<WebApplication> ReceiveAsync(ConcurrentQueue<(string Title, string Type, DateTimeOffset At)> arrived)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0));
        WebApplication app = builder.Build();
        app.Run(async context =>
        {
            using JsonDocument document = await JsonDocument.ParseAsync(context.Request.Body);
            DateTimeOffset now = TimeProvider.System.GetUtcNow();
            JsonElement root = document.RootElement;
            arrived.Enqueue((root.GetProperty("data").GetProperty("finding").GetString()!, root.GetProperty("type").GetString()!, now));
            context.Response.StatusCode = StatusCodes.Status204NoContent;
        });
        await app.StartAsync();
        return app;
    }

    private static async Task<double> ManyAsync(string url, ConcurrentQueue<(string Title, string Type, DateTimeOffset At)> arrived, TextWriter output)
    {
        string folder = Directory.CreateTempSubdirectory("boothwatch-alert-latency-").FullName;
        JournalLocation location = new(Path.Combine(folder, JournalLocation.DemoFileName), IsDemo: true);
        using (Journal journal = new(location, TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance))
        {
            IReadOnlyList<WatchedJob> jobs = [];
            AlertSources sources = new() { Shop = "Harbour Lane", Booth = "corner", Limits = new AlertLimits(), Folder = folder, Jobs = () => Volatile.Read(ref jobs) };
            AlertJournal alerts = new(journal, location);
            IOptions<AlertsOptions> options = Options.Create(new AlertsOptions { Webhook = { Url = url, Secret = Secret } });
            using HttpClient http = HttpDelivery.Client();
            WebhookChannel channel = new(http, new AlertLinks(new AcknowledgeTokens(new AlertKeys(options, sources)), options), options, TimeProvider.System);
            using AlertDispatcher dispatcher = new(new Outbox(alerts), [channel], TimeProvider.System, NullLogger<AlertDispatcher>.Instance);
            AlertOutput alertOutput = new(new AlertStore(alerts, sources), dispatcher, [channel], sources, options, TimeProvider.System);
            OutputPumpOptions queue = new();
            AlertsSetup.Queue(queue);
            using OutputPump pump = new(alertOutput, queue, TimeProvider.System, NullLogger<OutputPump>.Instance);
            await dispatcher.StartAsync(CancellationToken.None);
            await pump.StartAsync(CancellationToken.None);

            List<double> seconds = [];
            for (int number = 1; number <= Alerts; number++)
            {
                // Every assessment finds another wait that is over, so each is an alert.
                DateTimeOffset now = TimeProvider.System.GetUtcNow();
                Volatile.Write(ref jobs, [Due(number, now)]);
                int before = arrived.Count;
                pump.Post(Quiet(now));
                await UntilAsync(() => arrived.Count > before, $"alert {number}");
                seconds.Add((arrived.Last().At - now).TotalSeconds);
            }

            await pump.StopAsync(CancellationToken.None);
            await dispatcher.StopAsync(CancellationToken.None);
            seconds.Sort();
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{Alerts} alerts, assessment to handed over: median {1000 * seconds[Alerts / 2]:0.0} ms, 95 % {1000 * seconds[(int)(0.95 * Alerts)]:0.0} ms, longest {1000 * seconds[^1]:0.0} ms"));
            Directory.Delete(folder, recursive: true);
            return seconds[^1];
        }
    }

    private static async Task<double> DayAsync(string url, ConcurrentQueue<(string Title, string Type, DateTimeOffset At)> arrived, TextWriter output)
    {
        string folder = Directory.CreateTempSubdirectory("boothwatch-alert-latency-").FullName;
        IConfigurationRoot configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["series:folder"] = folder,
            ["page:url"] = "http://127.0.0.1:0",
            ["mqtt:use"] = "off",
            ["logging:level"] = "error",
            ["jobs:demoPast"] = "false",
            ["demo:startAt"] = "11:00",
            ["alerts:webhook:url"] = url,
            ["alerts:webhook:secret"] = Secret,
        }).Build();
        double worst = 0;
        await using (WebApplication app = BoothHost.Build(new ConfigurationFile(null, configuration, [])))
        {
            await app.StartAsync();
            PageFeed feed = app.Services.GetRequiredService<PageFeed>();
            Verdict best = Verdict.Wait;
            DateTimeOffset until = TimeProvider.System.GetUtcNow().AddMinutes(3);
            for (Verdict last = Verdict.Wait; TimeProvider.System.GetUtcNow() < until && !(best == Verdict.Spray && last == Verdict.Wait);)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
                if (feed.Current.Assessment is not { } assessment || assessment.Verdict == last)
                {
                    continue;
                }

                if (assessment.Verdict < last && best == Verdict.Spray)
                {
                    string finding = assessment.Reasons[0].Finding;
                    await UntilAsync(() => arrived.Any(letter => letter.Title == finding), "the alert of the shop day");
                    double readingS = assessment.Snapshot.Readings.Values.Where(reading => reading.IsGood).Max(reading => reading.Age.TotalSeconds);
                    double seconds = (arrived.First(letter => letter.Title == finding).At - assessment.Time).TotalSeconds + readingS;
                    worst = Math.Max(worst, seconds);
                    output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"shop day, {assessment.Verdict.Word()}: oldest reading to handed over {1000 * seconds:0} ms, of it {1000 * readingS:0} ms until it was assessed"));
                }

                last = assessment.Verdict;
                best = last > best ? last : best;
            }

            await app.StopAsync();
        }

        Directory.Delete(folder, recursive: true);
        return worst > 0 ? worst : throw new InvalidOperationException("The verdict of the shop day did not get worse in three minutes.");
    }

    private static async Task UntilAsync(Func<bool> condition, string what)
    {
        long start = TimeProvider.System.GetTimestamp();
        while (!condition())
        {
            if (TimeProvider.System.GetElapsedTime(start) > Patience)
            {
                throw new TimeoutException($"waited {Patience.TotalSeconds} s in vain for {what}");
            }

            await Task.Delay(TimeSpan.FromMilliseconds(1), TimeProvider.System);
        }
    }

    private static WatchedJob Due(int coat, DateTimeOffset now)
    {
        CoatDetails details = new()
        {
            Kind = CoatKind.Flash,
            Mix = new CoatMix("nitrocellulose lacquer", 1, "ordinary thinner", 4, "2-butoxyethanol", 0),
            WetFilmUm = 40,
            Substrate = "wood",
            AirSpeedMPerS = 0.5,
            Start = now.AddHours(-5),
        };
        Job job = Job.From(
        [
            new JobEntry(1, 1, now.AddHours(-6), "page", new JobStarted(new JobDetails("table top", "satin", "touch-up"))),
            new JobEntry(2, 1, now.AddHours(-5), "page", new CoatMarked(coat, details, null)),
            new JobEntry(3, 1, now.AddHours(-5), "page", new CoatStopped(coat, now.AddHours(-5).AddMinutes(5))),
        ]);
        return new WatchedJob(job, [new JobTimer(JobTimerKind.NextRound, "round 2", now.AddHours(-5), TimeSpan.FromHours(4), now.AddHours(-1), "")], null);
    }

    private static Assessment Quiet(DateTimeOffset now) => new()
    {
        Time = now,
        Snapshot = new BoothSnapshot(now, ClockProven: true, ImmutableDictionary<Quantity, Reading>.Empty),
        Air = null,
        Film = null,
        Verdict = Verdict.Wait,
        Reasons = [new Reason("booth-air-unknown", Verdict.Wait, "the booth air is not known", "wait")],
    };
}
