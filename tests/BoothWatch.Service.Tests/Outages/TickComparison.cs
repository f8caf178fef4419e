using System.Diagnostics;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>Times two pieces of work in turns within one run, so that whatever else the machine does falls on both.</summary>
/// <param name="First">Median and 99th percentile of the first, ms.</param>
/// <param name="Second">Median and 99th percentile of the second, ms.</param>
internal sealed record TickComparison((double MedianMs, double P99Ms) First, (double MedianMs, double P99Ms) Second)
{
    public static TickComparison Measure(int times, Action first, Action second)
    {
        double[] firstMs = new double[times];
        double[] secondMs = new double[times];
        for (int i = 0; i < times; i++)
        {
            // Turn and turn about, so that neither always runs on what the other has warmed.
            if (i % 2 == 0)
            {
                firstMs[i] = Time(first);
                secondMs[i] = Time(second);
            }
            else
            {
                secondMs[i] = Time(second);
                firstMs[i] = Time(first);
            }
        }

        return new TickComparison(Summarise(firstMs), Summarise(secondMs));
    }

    /// <summary>True when the second is no slower than a busy machine explains: the median within double, the 99th percentile within triple, plus a little for the clock.</summary>
    public bool SecondIsNoSlower =>
        Second.MedianMs <= (2 * First.MedianMs) + 0.05 && Second.P99Ms <= (3 * First.P99Ms) + 0.5;

    private static double Time(Action work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static (double, double) Summarise(double[] ms)
    {
        Array.Sort(ms);
        return (ms[ms.Length / 2], ms[ms.Length * 99 / 100]);
    }
}
