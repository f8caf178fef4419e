namespace BoothWatch.Service.Tests.Outages;

/// <summary>Two pieces of work timed in turns within one run, so that whatever else the machine does falls on both.</summary>
/// <param name="FirstMs">Every time of the first, ms, ascending.</param>
/// <param name="SecondMs">Every time of the second, ms, ascending.</param>
internal sealed record TickComparison(double[] FirstMs, double[] SecondMs)
{
    /// <summary>Times both.</summary>
    /// <param name="times">How often.</param>
    /// <param name="first">Does the first and gives what it took, ms.</param>
    /// <param name="second">The same for the second.</param>
    public static TickComparison Measure(int times, Func<double> first, Func<double> second)
    {
        double[] firstMs = new double[times];
        double[] secondMs = new double[times];
        for (int i = 0; i < times; i++)
        {
            // Turn and turn about, so that neither always runs on what the other has warmed.
            if (i % 2 == 0)
            {
                firstMs[i] = first();
                secondMs[i] = second();
            }
            else
            {
                secondMs[i] = second();
                firstMs[i] = first();
            }
        }

        Array.Sort(firstMs);
        Array.Sort(secondMs);
        return new TickComparison(firstMs, secondMs);
    }

    /// <summary>
    /// True when the second is no slower than a busy machine explains: the median within one and a half, the 99th percentile, which is
    /// but a few of the times, within double and a millisecond.
    /// </summary>
    public bool SecondIsNoSlower =>
        Percentile(SecondMs, 50) <= 1.5 * Percentile(FirstMs, 50)
        && Percentile(SecondMs, 99) <= (2 * Percentile(FirstMs, 99)) + 1;

    /// <summary>A percentile of times in ascending order.</summary>
    public static double Percentile(double[] ms, int percent) => ms[Math.Min(ms.Length - 1, ms.Length * percent / 100)];

    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"up: median {Percentile(FirstMs, 50):0.0000} ms, p99 {Percentile(FirstMs, 99):0.000} ms; down: median {Percentile(SecondMs, 50):0.0000} ms, p99 {Percentile(SecondMs, 99):0.000} ms");
}
