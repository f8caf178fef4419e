using BoothWatch.Service.Outputs.Influx;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Tests.Outputs.Series;

namespace BoothWatch.Service.Tests.Outputs.Influx;

public sealed class InfluxShipperTests : IDisposable
{
    private readonly ShippingBench _bench = new();
    private readonly ListWriter _writer = new();

    [Fact]
    public async Task Round_WithMoreRowsThanABatch_ShipsAllInOrderThenRests()
    {
        _bench.Write(2500);
        using InfluxShipper shipper = _bench.Shipper(_writer, new InfluxOptions { BatchRows = 1000 });

        int rounds = await ShippingBench.ShipAllAsync(shipper);

        Assert.Equal(3, rounds);
        Assert.Equal(2500 + 3, _writer.Stored.Count);
        Assert.All(_writer.Stored.Values, times => Assert.Equal(1, times));
        OutputHealth health = shipper.Health!;
        Assert.Equal((2503L, 0, 0L, (TimeSpan?)null), (health.Handled, health.Queued, health.Dropped, health.OldestWaiting));
    }

    [Fact]
    public async Task Round_AfterARestart_GoesOnBehindTheMark()
    {
        _bench.Write(100);
        using (InfluxShipper first = _bench.Shipper(_writer))
        {
            await ShippingBench.ShipAllAsync(first);
        }

        _bench.Write(50);
        using InfluxShipper second = _bench.Shipper(_writer);
        await ShippingBench.ShipAllAsync(second);

        Assert.Equal(151, _writer.Stored.Count);
        Assert.All(_writer.Stored.Values, times => Assert.Equal(1, times));
    }

    [Fact]
    public async Task Round_WhileTheServerIsGone_BacksOffAndSaysHowMuchWaitsSinceWhen()
    {
        var log = new CapturedLog<InfluxShipper>();
        _bench.Write(60);
        _writer.Answer = _ => new WriteAnswer(WriteAnswerKind.TryLater, "http://127.0.0.1:8086 cannot be reached");
        using InfluxShipper shipper = _bench.Shipper(_writer, logger: log, random: () => 1);

        List<TimeSpan> waits = [];
        for (int i = 0; i < 8; i++)
        {
            waits.Add(await shipper.RoundAsync(CancellationToken.None));
        }

        Assert.Equal([1, 2, 4, 8, 16, 32, 60, 60], waits.Select(wait => wait.TotalSeconds));
        OutputHealth health = shipper.Health!;
        Assert.True(health.IsFailing);
        Assert.Equal(61, health.Queued);
        Assert.Equal(59, health.OldestWaiting!.Value.TotalSeconds);
        Assert.Contains("cannot be reached", health.LastError, StringComparison.Ordinal);

        _writer.Answer = _ => WriteAnswer.Accepted;
        Assert.Equal(10, (await shipper.RoundAsync(CancellationToken.None)).TotalSeconds);
        Assert.False(shipper.Health!.IsFailing);
        Assert.Contains(log.Entries, entry => entry.Message == "Shipping works again after 8 failed attempts");
    }

    [Fact]
    public async Task Round_ToABusyServer_WaitsAsLongAsItAsks()
    {
        _bench.Write(1);
        _writer.Answer = _ => new WriteAnswer(WriteAnswerKind.TryLater, "busy", TimeSpan.FromSeconds(90));
        using InfluxShipper shipper = _bench.Shipper(_writer);

        Assert.Equal(90, (await shipper.RoundAsync(CancellationToken.None)).TotalSeconds);
    }

    [Fact]
    public async Task Round_WithARefusedRow_KeepsItInTheJournalWithTheReason()
    {
        _bench.Write(10);
        _writer.Answer = lines => lines.Any(line => line.Contains("row_id=4i", StringComparison.Ordinal) && line.StartsWith("booth_reading", StringComparison.Ordinal))
            ? new WriteAnswer(WriteAnswerKind.Refused, "422: field type conflict") : WriteAnswer.Accepted;
        using InfluxShipper shipper = _bench.Shipper(_writer);

        await ShippingBench.ShipAllAsync(shipper);

        Assert.Equal(10, _writer.Stored.Count);
        Assert.Equal(1, shipper.Health!.SetAside);
        Assert.Equal(4, _bench.Folder.Ask<long>("SELECT row_id FROM set_aside WHERE source = 'reading'"));
        Assert.Equal("422: field type conflict", _bench.Folder.Ask<string>("SELECT reason FROM set_aside"));
        Assert.StartsWith("booth_reading,", _bench.Folder.Ask<string>("SELECT point FROM set_aside"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Round_WithAnUnexpectedFault_IsCaughtAndTriedAgain()
    {
        _bench.Write(1);
        _writer.Answer = _ => throw new InvalidOperationException("nobody expected this");
        using InfluxShipper shipper = _bench.Shipper(_writer);

        Assert.True(await shipper.RoundAsync(CancellationToken.None) > TimeSpan.Zero);
        Assert.Equal("nobody expected this", shipper.Health!.LastError);
    }

    [Fact]
    public async Task Round_BeforeTheJournalIsWritten_HasNothingToDo()
    {
        using InfluxShipper shipper = _bench.Shipper(_writer);

        await ShippingBench.ShipAllAsync(shipper);

        Assert.Empty(_writer.Requests);
    }

    [DatabaseFact]
    public async Task Round_ToARealDatabase_StoresEveryFieldUnderTheTagsOfTheBooth()
    {
        await using VictoriaMetrics database = await VictoriaMetrics.StartAsync();
        _bench.Write(5);
        using var writer = new InfluxWriter(new InfluxOptions { Url = database.Url }, TimeProvider.System);
        using InfluxShipper shipper = _bench.Shipper(writer);

        await ShippingBench.ShipAllAsync(shipper);

        IReadOnlyDictionary<string, string> labels = await database.LabelsAsync("booth_reading", "booth_temperature_c");
        Assert.Equal(("Harbour Lane", "corner", "measured"), (labels["shop"], labels["booth"], labels["origin"]));
        Assert.Equal(101_200.5, Assert.Single((await database.SamplesAsync("booth_reading", "station_pressure_pa")).Select(s => s.Value).Distinct()));
        Assert.Equal([1, 2, 3, 4, 5], (await database.SamplesAsync("booth_reading", "row_id")).Select(s => s.Value));
        Assert.Equal([1], (await database.SamplesAsync("booth_verdict_change", "row_id")).Select(s => s.Value));
    }

    public void Dispose() => _bench.Dispose();
}
