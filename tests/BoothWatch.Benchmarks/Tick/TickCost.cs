using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using BoothWatch.Benchmarks.Film;
using BoothWatch.Service.Tests.Outages;

namespace BoothWatch.Benchmarks.Tick;

/// <summary>
/// What one tick of the loop costs, from the readings to the light and the queues of the outputs, beside a fixed loop of floating
/// point in the same run: with the outputs up, and with every output down. docs/performance.md quotes the figures.
/// </summary>
internal static class TickCost
{
    private const int Ticks = 2000;
    private const int Sweeps = 300;

    /// <summary>Measures and prints.</summary>
    public static async Task<int> RunAsync(TextWriter output)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-tick-");
        try
        {
            await using TickRig up = await TickRig.StartAsync(("series:folder", folder.FullName));
            string file = Path.Combine(folder.FullName, "a-file");
            await File.WriteAllTextAsync(file, "");
            await using TickRig down = await TickRig.StartAsync(
                ("series:folder", Path.Combine(file, "journal")), ("influx:url", $"http://127.0.0.1:{FreePort()}"), ("influx:longestRetryS", "0.1"),
                ("mqtt:use", "external"), ("mqtt:host", "127.0.0.1"), ("mqtt:port", FreePort().ToString(CultureInfo.InvariantCulture)));
            var fixedLoop = new FilmBenchmarks();
            for (int i = 0; i < 300; i++)
            {
                up.Tick();
                down.Tick();
            }

            // In turns, so that whatever else the machine does falls on all of them.
            double[] loopMs = new double[200];
            double[] upMs = new double[Ticks];
            double[] downMs = new double[Ticks];
            for (int i = 0; i < Ticks; i++)
            {
                upMs[i] = Time(() => up.Tick());
                downMs[i] = Time(() => down.Tick());
                if (i % (Ticks / loopMs.Length) == 0)
                {
                    loopMs[i / (Ticks / loopMs.Length)] = Time(() => _ = fixedLoop.FixedLoop());
                }
            }

            double[] freshMs = new double[Sweeps];
            for (int i = 0; i < Sweeps; i++)
            {
                up.Sweep();
                freshMs[i] = Time(() => up.Tick());
            }

            double loop = Percentile(loopMs, 50);
            await output.WriteLineAsync("| what | median, ms | p99, ms | longest, ms | median, times the fixed loop |\n| --- | --: | --: | --: | --: |");
            foreach ((string name, double[] ms) in new[]
            {
                ("fixed loop: a million steps of x = 0.999 x + sqrt(x)", loopMs),
                ("tick, outputs up, readings as before", upMs),
                ("tick, every output down, readings as before", downMs),
                ("tick, outputs up, fresh readings each time", freshMs),
            })
            {
                await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture,
                    $"| {name} | {Percentile(ms, 50):0.000} | {Percentile(ms, 99):0.000} | {ms.Max():0.00} | {Percentile(ms, 50) / loop:0.0000} |"));
            }

            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture,
                $"\ndown against up: median x {Percentile(downMs, 50) / Percentile(upMs, 50):0.00}, p99 x {Percentile(downMs, 99) / Percentile(upMs, 99):0.00}"));
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static double Time(Action work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static double Percentile(double[] values, int percent)
    {
        double[] sorted = [.. values.Order()];
        return sorted[Math.Min(sorted.Length - 1, sorted.Length * percent / 100)];
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
