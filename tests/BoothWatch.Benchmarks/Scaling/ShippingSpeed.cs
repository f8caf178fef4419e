using System.Diagnostics;
using System.Globalization;
using BoothWatch.Benchmarks.Film;
using BoothWatch.Service.Outputs.Influx;
using BoothWatch.Service.Tests.Outputs.Influx;

namespace BoothWatch.Benchmarks.Scaling;

/// <summary>How fast a backlog goes through the writer into a real database, in batches of several sizes. docs/performance.md quotes the figures.</summary>
internal static class ShippingSpeed
{
    private const int Rows = 20_000;

    /// <summary>Measures and prints.</summary>
    public static async Task<int> RunAsync(TextWriter output)
    {
        if (!File.Exists(VictoriaMetrics.ProgramPath))
        {
            await output.WriteLineAsync(VictoriaMetrics.SkipReason);
            return 2;
        }

        double loopMs = Enumerable.Range(0, 10).Min(_ => FixedLoopMs());
        await using VictoriaMetrics database = await VictoriaMetrics.StartAsync();
        using var writer = new InfluxWriter(new InfluxOptions { Url = database.Url }, TimeProvider.System);
        var points = new Points(SimulatedBooth.Tags(0));
        DateTimeOffset start = TimeProvider.System.GetUtcNow().AddDays(-1);
        FeedRow[] rows = [.. Enumerable.Range(1, Rows).Select(id => SimulatedRow.Of(id, start.AddSeconds(id), 0))];
        await output.WriteLineAsync("| rows a batch | rows a second | this process, ms a thousand rows | database, ms a thousand rows |\n| --: | --: | --: | --: |");
        await writer.WriteAsync([.. rows.Take(1000).Select(row => points.Line("booth_reading", row))], CancellationToken.None);
        foreach (int batch in (int[])[10, 100, 1000, 5000])
        {
            TimeSpan ownBefore = Process.GetCurrentProcess().TotalProcessorTime;
            TimeSpan databaseBefore = database.Process.TotalProcessorTime;
            long started = Stopwatch.GetTimestamp();
            foreach (FeedRow[] part in rows.Chunk(batch))
            {
                WriteAnswer answer = await writer.WriteAsync([.. part.Select(row => points.Line("booth_reading", row))], CancellationToken.None);
                if (answer.Kind != WriteAnswerKind.Accepted)
                {
                    throw new InvalidOperationException(answer.Text);
                }
            }

            double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
            double own = (Process.GetCurrentProcess().TotalProcessorTime - ownBefore).TotalMilliseconds;
            database.Process.Refresh();
            double theirs = (database.Process.TotalProcessorTime - databaseBefore).TotalMilliseconds;
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture,
                $"| {batch} | {Rows / seconds:0} | {own * 1000 / Rows:0} | {theirs * 1000 / Rows:0} |"));
        }

        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"\nthe fixed loop of the other tables takes {loopMs:0.0} ms here now"));
        return 0;
    }

    private static double FixedLoopMs()
    {
        long began = Stopwatch.GetTimestamp();
        _ = new FilmBenchmarks().FixedLoop();
        return Stopwatch.GetElapsedTime(began).TotalMilliseconds;
    }
}
