using System.Diagnostics.Metrics;

namespace BoothWatch.Service.Assessing;

/// <summary>How long a tick takes, from the readings to the light and the queues of the outputs, as a histogram for <c>/metrics</c>.</summary>
internal static class TickMeter
{
    private static readonly Meter Meter = new("BoothWatch.Assessing");

    public static Histogram<double> DurationS { get; } = Meter.CreateHistogram(
        "boothwatch.tick.duration",
        "s",
        "Time a tick takes, from the readings to the light.",
        advice: new InstrumentAdvice<double>
        {
            HistogramBucketBoundaries = [0.0001, 0.0003, 0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1],
        });
}
