using System.Diagnostics;
using System.Globalization;
using BoothWatch.Benchmarks.Film;
using BoothWatch.Service.Tests.Jobs;

namespace BoothWatch.Benchmarks.WhatIf;

/// <summary>How long the page of what-if questions waits for an answer, over a real connection, each question a new one. Fails above 100 ms at the 95th percentile.</summary>
internal static class WhatIfAnswers
{
    private const int Questions = 200;
    private const double BoundMs = 100;

    /// <summary>Measures and prints.</summary>
    public static async Task<int> RunAsync(TextWriter output)
    {
        await using JobHost host = await JobHost.Start();
        var fixedLoop = new FilmBenchmarks();
        double[] loopMs = new double[Questions];
        double[] advisedMs = new double[Questions];
        double[] loadedMs = new double[Questions];
        await host.Text(Question(-1, loaded: false));
        await host.Text(Question(-1, loaded: true));
        for (int i = 0; i < Questions; i++)
        {
            loopMs[i] = await Time(() =>
            {
                _ = fixedLoop.FixedLoop();
                return Task.CompletedTask;
            });
            advisedMs[i] = await Time(() => host.Text(Question(i, loaded: false)));
            loadedMs[i] = await Time(() => host.Text(Question(i, loaded: true)));
        }

        Array.Sort(loopMs);
        double loop = loopMs[Questions / 2];
        await output.WriteLineAsync("| what | median, ms | 95 %, ms | median, times the fixed loop |\n| --- | --: | --: | --: |");
        foreach ((string name, double[] ms) in new[] { ("fixed loop", loopMs), ("answer with advised retarder", advisedMs), ("answer with the retarder in the cup given", loadedMs) })
        {
            Array.Sort(ms);
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"| {name} | {ms[Questions / 2]:0.0} | {High(ms):0.0} | {ms[Questions / 2] / loop:0.00} |"));
        }

        return Math.Max(High(advisedMs), High(loadedMs)) < BoundMs ? 0 : 1;
    }

    private static double High(double[] sorted) => sorted[(int)(0.95 * (sorted.Length - 1))];

    private static string Question(int number, bool loaded) => string.Create(
        CultureInfo.InvariantCulture,
        $"/api/what-if?temperature={15 + (number % 40 * 0.5)}C&humidity={45 + (number % 47)}&piece={14 + (number % 31 * 0.5)}C&wet-film={30 + (number % 19 * 5)}&coat={(number % 2 == 0 ? "flash" : "clear")}{(loaded ? "&retarder=" + ((number + 16) % 16) : "")}");

    private static async Task<double> Time(Func<Task> work)
    {
        long start = Stopwatch.GetTimestamp();
        await work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
}
