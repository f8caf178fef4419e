using BoothWatch.Service.Outputs.Influx;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Outputs.Influx;

/// <summary>A real journal in a temporary folder and a shipper over it, on a clock that the test turns.</summary>
internal sealed class ShippingBench : IDisposable
{
    private readonly Journal _journal;
    private readonly SeriesOutput _output;
    private long _written;

    public ShippingBench()
    {
        _journal = Folder.Journal();
        _output = new SeriesOutput(_journal, new SeriesOptions(), Folder.Time);
        Readings = new JournalFeed(new ShippingCursor(Folder.Location, _journal, ShippingCursor.Readings), "booth_reading", Folder.Time);
        Changes = new JournalFeed(new ShippingCursor(Folder.Location, _journal, ShippingCursor.VerdictChanges), "booth_verdict_change", Folder.Time);
    }

    public static BoothTags Tags { get; } = new("Harbour Lane", "corner", IsDemo: false);

    public JournalFolder Folder { get; } = new();

    public JournalFeed Readings { get; }

    public JournalFeed Changes { get; }

    /// <summary>Writes one row a second of the clock, all different, with a change of the verdict every 1000 rows.</summary>
    public void Write(int rows)
    {
        for (int i = 0; i < rows; i++)
        {
            Folder.Time.Advance(TimeSpan.FromSeconds(1));
            double wave = Math.Sin(_written / 300.0);
            _output.Write(TestAssessment.At(
                Folder.Time.GetUtcNow(), temperatureC: 21 + wave, humidityPct: 50 - (10 * wave), verdict: (Verdict)(_written / 1000 % 3)));
            _written++;
        }
    }

    public InfluxShipper Shipper(IPointWriter writer, InfluxOptions? options = null, ILogger<InfluxShipper>? logger = null, Func<double>? random = null) =>
        new(
            [Readings, Changes], writer, new Points(Tags), options ?? new InfluxOptions(), Folder.Time,
            logger ?? NullLogger<InfluxShipper>.Instance, random ?? (() => 0.5));

    /// <summary>Rounds until nothing waits; the number of rounds.</summary>
    public static async Task<int> ShipAllAsync(InfluxShipper shipper)
    {
        for (int round = 1; ; round++)
        {
            TimeSpan wait = await shipper.RoundAsync(CancellationToken.None);
            Assert.False(shipper.Health!.IsFailing, shipper.Health.LastError);
            if (wait > TimeSpan.Zero)
            {
                return round;
            }
        }
    }

    public void Dispose() => Folder.Dispose();
}
