using BenchmarkDotNet.Attributes;
using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Tests.Film;

namespace BoothWatch.Benchmarks.Film;

/// <summary>Time of one drying run and of one recommendation. The baseline is a fixed loop of floating point, so that machines compare by ratio.</summary>
[MemoryDiagnoser]
public class FilmBenchmarks
{
    private static readonly AirUncertainty Sensor = new(0.1, 1);

    private readonly MoistAir _air = MoistAir.FromRelativeHumidity(24, 75, 101_325);
    private readonly CoatPlan _plan = TestCoat.Plan();
    private readonly BlushModel _warm = new();
    private readonly CoatConditions _coat = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Thinned("ordinary thinner"), 5), airC: 24);

    [Benchmark(Baseline = true, Description = "a million steps of x = 0.999 x + sqrt(x)")]
    public double FixedLoop()
    {
        double x = 1;
        for (int i = 0; i < 1_000_000; i++)
        {
            x = (0.999 * x) + Math.Sqrt(x);
        }

        return x;
    }

    [Benchmark(Description = "one drying run")]
    public double OneRun() => DryingRun.Simulate(_coat, _air.VapourPressurePa).WaterAtSetGPerM2;

    [Benchmark(Description = "critical humidity of one mix")]
    public double Critical() => CriticalHumidity.Find(_coat).RelativeHumidityPct;

    [Benchmark(Description = "recommendation from a ladder of 16 levels, nothing remembered")]
    public double? Recommendation() => new BlushModel().Assess(_plan, _air, 24, Sensor, 0.3, 1, 1).RecommendedRetarderPct;

    [Benchmark(Description = "the same, remembered (each second in the booth)")]
    public double? Remembered() => _warm.Assess(_plan, _air, 24, Sensor, 0.3, 1, 1).RecommendedRetarderPct;
}
