using System.Globalization;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Tests.Outputs.Influx;
using BoothWatch.Service.Tests.Outputs.Mqtt;
using Xunit.Abstractions;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>The light waits for no output: a tick takes as long with every output down as with every output up.</summary>
public sealed class TickLatencyTests(ITestOutputHelper output)
{
    private const int Ticks = 1000;
    private const int Attempts = 5;

    [Fact]
    public async Task Tick_WithEveryOutputDown_TakesNoLongerThanWithEveryOutputUp()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-ticks-");
        try
        {
            await using StubServer database = await StubServer.StartAsync();
            await using TickRig up = await TickRig.StartAsync(
                ("series:folder", folder.FullName), ("influx:url", database.Url), ("influx:everyS", "0.1"),
                ("mqtt:broker:port", Port()));

            // No folder can be made inside a file, and nobody listens on the ports.
            string file = Path.Combine(folder.FullName, "a-file");
            await File.WriteAllTextAsync(file, "");
            await using TickRig down = await TickRig.StartAsync(
                ("series:folder", Path.Combine(file, "journal")),
                ("influx:url", $"http://127.0.0.1:{VictoriaMetrics.FreePort()}"), ("influx:everyS", "0.1"), ("influx:longestRetryS", "0.1"),
                ("mqtt:use", "external"), ("mqtt:host", "127.0.0.1"), ("mqtt:port", Port()), ("mqtt:firstRetryS", "0.1"), ("mqtt:longestRetryS", "0.1"));
            TickComparison.Measure(200, () => up.Tick(), () => down.Tick());
            await Eventually.TrueAsync(() => Mqtt(down).IsFailing && Mqtt(up).Handled > 0, "one broker away, the other served");

            TickComparison ticks;
            int attempt = 0;
            do
            {
                ticks = TickComparison.Measure(Ticks, () => up.Tick(), () => down.Tick());
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"up: median {ticks.First.MedianMs:0.0000} ms, p99 {ticks.First.P99Ms:0.000} ms; down: median {ticks.Second.MedianMs:0.0000} ms, p99 {ticks.Second.P99Ms:0.000} ms"));
            }
            while (!ticks.SecondIsNoSlower && ++attempt < Attempts);

            Assert.True(ticks.SecondIsNoSlower, $"a tick waits for an output: {ticks}");
            OutputHealth journal = down.Health.Single(health => health.Name == "series");
            Assert.True(journal is { IsFailing: true, Dropped: > 0 }, $"the journal was to be down: {journal}");
            Assert.True(up.Health.Single(health => health.Name == "series") is { IsFailing: false, Handled: > 0 });
            Assert.True(Mqtt(down) is { IsFailing: true, Handled: 0 }, $"the broker was to be down: {Mqtt(down)}");
            Assert.True(Mqtt(up) is { IsFailing: false, Handled: > 0 }, $"the broker was to be up: {Mqtt(up)}");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Port() => VictoriaMetrics.FreePort().ToString(CultureInfo.InvariantCulture);

    private static OutputHealth Mqtt(TickRig rig) => rig.Health.Single(health => health.Name == "mqtt");

    [Fact]
    public void Comparison_OfWorkThatWaitsASingleMillisecond_Fires()
    {
        long Spin(double ms)
        {
            long start = TimeProvider.System.GetTimestamp();
            while (TimeProvider.System.GetElapsedTime(start).TotalMilliseconds < ms)
            {
            }

            return start;
        }

        // The bound must see a wait far shorter than any network or disk time-out, on top of a tick of 0.1 ms.
        Assert.False(TickComparison.Measure(200, () => Spin(0.1), () => Spin(1.1)).SecondIsNoSlower);
    }
}
