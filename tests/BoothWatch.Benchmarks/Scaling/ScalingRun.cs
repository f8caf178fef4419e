using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using BoothWatch.Service.Outputs.Influx;
using BoothWatch.Service.Tests.Outputs.Influx;
using MQTTnet;
using MQTTnet.Protocol;

namespace BoothWatch.Benchmarks.Scaling;

/// <summary>
/// One broker and one database, real programs on loopback, under so many simulated booths (1, 10, 100 and 500 unless told otherwise). Each booth has its own
/// connections: once a second it publishes one snapshot and twelve values with QoS 1, retained, and every ten seconds it writes
/// ten rows. docs/scaling.md quotes the figures.
/// </summary>
internal static class ScalingRun
{
    private const int Values = 12;
    private const int RowsAWrite = 10;
    private static readonly int[] UsualSteps = [1, 10, 100, 500];
    private static readonly byte[] Snapshot = Encoding.UTF8.GetBytes(new string('x', 1500));
    private static readonly byte[] Value = Encoding.UTF8.GetBytes("21.53");

    /// <summary>Measures and prints, <paramref name="seconds"/> a step.</summary>
    public static async Task<int> RunAsync(double seconds, int[] steps, TextWriter output)
    {
        if (!File.Exists(VictoriaMetrics.ProgramPath) || !File.Exists(Mosquitto.ProgramPath))
        {
            await output.WriteLineAsync("needs mosquitto and victoria-metrics (Debian: apt install mosquitto victoria-metrics)");
            return 2;
        }

        await output.WriteLineAsync(
            "| booths | messages a second | acknowledged within, p50 / p99 ms | broker: processor %, MB | fields a second | write answered within, p50 / p99 ms | database: processor %, MB | rounds late | failures | load: processor % |\n"
            + "| --: | --: | --: | --: | --: | --: | --: | --: | --: | --: |");
        foreach (int booths in steps.Length > 0 ? steps : UsualSteps)
        {
            await using Mosquitto broker = await Mosquitto.StartAsync();
            await using VictoriaMetrics database = await VictoriaMetrics.StartAsync();
            await output.WriteLineAsync(await StepAsync(booths, TimeSpan.FromSeconds(seconds), broker, database));
        }

        return 0;
    }

    private static async Task<string> StepAsync(int booths, TimeSpan length, Mosquitto broker, VictoriaMetrics database)
    {
        var tally = new Tally();
        var clients = new List<IMqttClient>();
        for (int booth = 0; booth < booths; booth++)
        {
            IMqttClient client = new MqttClientFactory().CreateMqttClient();
            clients.Add(client);
            await ConnectAsync(client, new MqttClientOptionsBuilder()
                .WithTcpServer("127.0.0.1", broker.Port)
                .WithProtocolVersion(MQTTnet.Formatter.MqttProtocolVersion.V500)
                .WithClientId($"booth-{booth}")
                .WithTimeout(TimeSpan.FromSeconds(30))
                .Build(), tally);
        }

        int connected = clients.Count(client => client.IsConnected);

        using Process own = Process.GetCurrentProcess();
        (TimeSpan ownBefore, TimeSpan brokerBefore, TimeSpan databaseBefore) = Processor(own, broker, database);
        long started = Stopwatch.GetTimestamp();
        await Task.WhenAll(clients.SelectMany((client, booth) => new[]
        {
            Task.Run(() => PublishAsync(client, booth, (double)booth / booths, length, tally)),
            Task.Run(() => WriteAsync(database.Url, booth, (double)booth / booths, length, tally)),
        }));
        double elapsed = Stopwatch.GetElapsedTime(started).TotalSeconds;
        (TimeSpan ownAfter, TimeSpan brokerAfter, TimeSpan databaseAfter) = Processor(own, broker, database);
        foreach (IMqttClient client in clients)
        {
            client.Dispose();
        }

        string Percent(TimeSpan before, TimeSpan after) =>
            string.Create(CultureInfo.InvariantCulture, $"{(after - before).TotalSeconds * 100 / elapsed:0.0}");
        return string.Create(CultureInfo.InvariantCulture,
            $"| {booths}{(connected < booths ? $" ({connected} connected)" : "")} | {tally.PublishMs.Count / elapsed:0} | {Both(tally.PublishMs)} | {Percent(brokerBefore, brokerAfter)}, {broker.Process.WorkingSet64 / 1e6:0} "
            + $"| {tally.Fields / elapsed:0} | {Both(tally.WriteMs)} | {Percent(databaseBefore, databaseAfter)}, {database.Process.WorkingSet64 / 1e6:0} "
            + $"| {tally.Late} of {tally.Rounds} | {tally.Failures} | {Percent(ownBefore, ownAfter)} |");
    }

    private static async Task ConnectAsync(IMqttClient client, MqttClientOptions options, Tally tally)
    {
        try
        {
            await client.ConnectAsync(options);
        }
        catch (Exception e) when (e is MQTTnet.Exceptions.MqttCommunicationException or OperationCanceledException or TimeoutException)
        {
            Interlocked.Increment(ref tally.Failures);
        }
    }

    private static async Task PublishAsync(IMqttClient client, int booth, double phase, TimeSpan length, Tally tally)
    {
        await Rounds(length, TimeSpan.FromSeconds(1), phase, tally, async () =>
        {
            await PublishOneAsync(client, $"scaling/{booth}/snapshot", Snapshot, tally);
            for (int value = 0; value < Values; value++)
            {
                await PublishOneAsync(client, $"scaling/{booth}/air/value-{value}", Value, tally);
            }
        });
    }

    private static async Task PublishOneAsync(IMqttClient client, string topic, byte[] payload, Tally tally)
    {
        long sent = Stopwatch.GetTimestamp();
        try
        {
            MqttClientPublishResult result = await client.PublishAsync(new MqttApplicationMessage
            {
                Topic = topic,
                PayloadSegment = payload,
                Retain = true,
                QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
            });
            if (result.IsSuccess)
            {
                tally.PublishMs.Add(Stopwatch.GetElapsedTime(sent).TotalMilliseconds);
                return;
            }
        }
        catch (Exception e) when (e is MQTTnet.Exceptions.MqttCommunicationException or MQTTnet.Exceptions.MqttClientNotConnectedException or OperationCanceledException or TimeoutException)
        {
            // Counted below.
        }

        Interlocked.Increment(ref tally.Failures);
    }

    private static async Task WriteAsync(string url, int booth, double phase, TimeSpan length, Tally tally)
    {
        using var writer = new InfluxWriter(new InfluxOptions { Url = url }, TimeProvider.System);
        var points = new Points(SimulatedBooth.Tags(booth));
        long id = 0;
        await Rounds(length, TimeSpan.FromSeconds(RowsAWrite), phase, tally, async () =>
        {
            DateTimeOffset now = TimeProvider.System.GetUtcNow();
            string[] lines = [.. Enumerable.Range(0, RowsAWrite).Select(s => points.Line("booth_reading", SimulatedRow.Of(++id, now.AddSeconds(s - RowsAWrite), booth)))];
            long sent = Stopwatch.GetTimestamp();
            WriteAnswer answer = await writer.WriteAsync(lines, CancellationToken.None);
            if (answer.Kind == WriteAnswerKind.Accepted)
            {
                tally.WriteMs.Add(Stopwatch.GetElapsedTime(sent).TotalMilliseconds);
                Interlocked.Add(ref tally.Fields, RowsAWrite * (SimulatedRow.Fields + 1));
            }
            else
            {
                Interlocked.Increment(ref tally.Failures);
            }
        });
    }

    /// <summary>Works once an interval, spread over it by the phase; a round that begins more than half an interval late is counted.</summary>
    private static async Task Rounds(TimeSpan length, TimeSpan every, double phase, Tally tally, Func<Task> work)
    {
        long start = Stopwatch.GetTimestamp();
        for (int round = 0; ; round++)
        {
            TimeSpan due = every * (round + phase);
            if (due >= length)
            {
                return;
            }

            TimeSpan wait = due - Stopwatch.GetElapsedTime(start);
            if (wait > TimeSpan.Zero)
            {
                await Task.Delay(wait, TimeProvider.System);
            }

            Interlocked.Increment(ref tally.Rounds);
            if (Stopwatch.GetElapsedTime(start) - due > every / 2)
            {
                Interlocked.Increment(ref tally.Late);
            }

            await work();
        }
    }

    private static (TimeSpan Own, TimeSpan Broker, TimeSpan Database) Processor(Process own, Mosquitto broker, VictoriaMetrics database)
    {
        own.Refresh();
        broker.Process.Refresh();
        database.Process.Refresh();
        return (own.TotalProcessorTime, broker.Process.TotalProcessorTime, database.Process.TotalProcessorTime);
    }

    private static string Both(ConcurrentBag<double> ms)
    {
        double[] sorted = [.. ms.Order()];
        return sorted.Length == 0
            ? "-"
            : string.Create(CultureInfo.InvariantCulture, $"{sorted[sorted.Length / 2]:0.0} / {sorted[sorted.Length * 99 / 100]:0.0}");
    }

    private sealed class Tally
    {
        public int Rounds;
        public int Late;
        public int Failures;
        public long Fields;

        public ConcurrentBag<double> PublishMs { get; } = [];

        public ConcurrentBag<double> WriteMs { get; } = [];
    }
}
