using System.Diagnostics;
using System.Globalization;
using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Tests.Film;
using BoothWatch.Warming;

namespace BoothWatch.Benchmarks.Film;

/// <summary>
/// Processor time of the film model beside a fixed loop of floating point. Unlike wall time it stays steady on a machine that others use,
/// and its ratio to the loop carries over to another machine.
/// </summary>
internal static class FilmCost
{
    /// <summary>Measures and prints.</summary>
    public static int Print(TextWriter output)
    {
        MoistAir air = MoistAir.FromRelativeHumidity(24, 75, 101_325);
        AirUncertainty sensor = new(0.1, 1);
        CoatPlan plan = TestCoat.Plan();
        CoatConditions coat = TestCoat.Conditions(plan.Ladder[5].Mix, airC: 24);
        BlushModel warm = new();
        Substrate body = new("thick wood", 0.045, 0.15, 770_000);
        BodyGuess guess = BodyGuess.Of(body, air, 0.5);
        WarmingPoint[] trail = [.. Enumerable.Range(0, 1200).Select(t => new WarmingPoint(t, 24 - (14 * Math.Exp(-t / 2000.0)), 24))];
        double loop = Milliseconds(10, () => _ = new FilmBenchmarks().FixedLoop());
        (string Name, double Cost)[] rows =
        [
            ("fixed loop: a million steps of x = 0.999 x + sqrt(x)", loop),
            ("one drying run", Milliseconds(1000, () => DryingRun.Simulate(coat, air.VapourPressurePa))),
            ("critical humidity of one mix", Milliseconds(100, () => CriticalHumidity.Find(coat))),
            ("recommendation from 16 levels, nothing remembered", Milliseconds(20, () => new BlushModel().Assess(plan, air, 24, sensor, 0.3, 1, 1))),
            ("the same, remembered (each second in the booth)", Milliseconds(1000, () => warm.Assess(plan, air, 24, sensor, 0.3, 1, 1))),
            ("time until a cold piece is warm, by the model", Milliseconds(100, () => SlabWarming.Until(body, air, 0.5, 5, 0.3, 21))),
            ("the same, by a trail of 20 minutes", Milliseconds(50, () => WarmingFit.Of(trail, 1199)!.Until(24, 20, 0.3, guess))),
        ];
        output.WriteLine("| what | processor time, ms | times the fixed loop |\n| --- | --: | --: |");
        foreach ((string name, double cost) in rows)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {cost:0.00} | {cost / loop:0.000} |"));
        }

        return 0;
    }

    private static double Milliseconds(int times, Action work)
    {
        double best = double.PositiveInfinity;
        for (int repeat = 0; repeat < 5; repeat++)
        {
            TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
            for (int i = 0; i < times; i++)
            {
                work();
            }

            best = Math.Min(best, (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds / times);
        }

        return best;
    }
}
