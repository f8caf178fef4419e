using BoothWatch.Service.Outputs.Influx;

namespace BoothWatch.Benchmarks.Scaling;

/// <summary>Names of simulated booths, five to a shop.</summary>
internal static class SimulatedBooth
{
    /// <summary>Tags of booth number <paramref name="number"/>.</summary>
    public static BoothTags Tags(int number) => new($"shop {number / 5}", $"booth {number % 5}", IsDemo: true);
}
