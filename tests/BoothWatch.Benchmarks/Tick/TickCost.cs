using System.Diagnostics;
using System.Globalization;
using BoothWatch.Benchmarks.Film;
using BoothWatch.Service.Tests.Outages;

namespace BoothWatch.Benchmarks.Tick;

/// <summary>
/// What one tick of the loop costs, from fresh readings to the light and the queues of the outputs, beside a fixed loop of floating
/// point in the same run: with every output up, and with every output down. docs/performance.md quotes the figures.
/// </summary>
internal static class TickCost
{
    private const int Ticks = 2000;
    private const int Warming = 100;
    private const int Loops = 200;

    /// <summary>Measures and prints.</summary>
    public static async Task<int> RunAsync(TextWriter output)
    {
        await using TickPair pair = await TickPair.StartAsync();
        await pair.SettleAsync();
        TickComparison.Measure(Warming, pair.Up.TickMs, pair.Down.TickMs);

        // In turns, so that whatever else the machine does falls on all of them.
        var fixedLoop = new FilmBenchmarks();
        List<double> loopMs = [];
        int turn = 0;
        TickComparison ticks = TickComparison.Measure(
            Ticks,
            () =>
            {
                if (turn++ % (Ticks / Loops) == 0)
                {
                    loopMs.Add(Time(() => _ = fixedLoop.FixedLoop()));
                }

                return pair.Up.TickMs();
            },
            pair.Down.TickMs);
        double[] loop = [.. loopMs.Order()];

        await output.WriteLineAsync("| what | median, ms | p99, ms | longest, ms | median, times the fixed loop |\n| --- | --: | --: | --: | --: |");
        foreach ((string name, double[] ms) in new[]
        {
            ("fixed loop: a million steps of x = 0.999 x + sqrt(x)", loop),
            ("tick, every output up", ticks.FirstMs),
            ("tick, every output down", ticks.SecondMs),
        })
        {
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture,
                $"| {name} | {Of(ms, 50):0.000} | {Of(ms, 99):0.000} | {ms[^1]:0.00} | {Of(ms, 50) / Of(loop, 50):0.0000} |"));
        }

        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture,
            $"\ndown against up: median x {Of(ticks.SecondMs, 50) / Of(ticks.FirstMs, 50):0.00}, p99 x {Of(ticks.SecondMs, 99) / Of(ticks.FirstMs, 99):0.00}"));
        if (pair.Check() is { } trouble)
        {
            await output.WriteLineAsync($"\nNot to be quoted: {trouble}");
            return 1;
        }

        return 0;
    }

    private static double Of(double[] ms, int percent) => TickComparison.Percentile(ms, percent);

    private static double Time(Action work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
}
