using System.Diagnostics;
using BoothWatch.Service.Outputs.Influx;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Tests.Outputs.Influx;
using Xunit.Abstractions;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>The database goes away, or hangs, and comes back: every row of the journal is there afterwards, once. Figures in docs/influx.md.</summary>
public sealed class DatabaseOutageTests(ITestOutputHelper output) : IDisposable
{
    private const int Hour = 3600;
    private readonly ShippingBench _bench = new();

    [DatabaseFact]
    public async Task Database_DownForSixHours_HasEveryRowOnceAfterwards()
    {
        await using VictoriaMetrics database = await VictoriaMetrics.StartAsync();
        using var writer = new InfluxWriter(new InfluxOptions { Url = database.Url }, TimeProvider.System);
        using InfluxShipper shipper = _bench.Shipper(writer);
        _bench.Write(60);
        await ShippingBench.ShipAllAsync(shipper);

        await database.StopAsync();
        for (int hour = 0; hour < 6; hour++)
        {
            _bench.Write(Hour);
            await shipper.RoundAsync(CancellationToken.None);
            Assert.True(shipper.Health!.IsFailing);
        }

        OutputHealth down = shipper.Health!;
        Assert.Equal((6 * Hour) + _bench.Changes.State().Waiting, down.Queued);
        Assert.Equal(TimeSpan.FromSeconds((6 * Hour) - 1), down.OldestWaiting);

        await database.StartAgainAsync();
        long back = Stopwatch.GetTimestamp();
        await ShippingBench.ShipAllAsync(shipper);
        output.WriteLine($"{down.Queued} rows shipped in {Stopwatch.GetElapsedTime(back).TotalSeconds:0.0} s after the database was back");

        await EveryRowIsThereOnceAsync(database, (6 * Hour) + 60);
        Assert.Equal((0, 0L, 0L), (shipper.Health!.Queued, shipper.Health.Dropped, shipper.Health.SetAside));
    }

    [DatabaseFact]
    public async Task Connection_ThatHangsWithoutClosing_TimesOutAndRecovers()
    {
        await using VictoriaMetrics database = await VictoriaMetrics.StartAsync(deduplicate: true);
        await using var proxy = new StallingProxy(database.Port);
        using var writer = new InfluxWriter(new InfluxOptions { Url = proxy.Url, TimeoutS = 1 }, TimeProvider.System);
        using InfluxShipper shipper = _bench.Shipper(writer);
        _bench.Write(60);
        await ShippingBench.ShipAllAsync(shipper);

        proxy.RequestsStalled = true;
        _bench.Write(60);
        long hung = Stopwatch.GetTimestamp();
        await shipper.RoundAsync(CancellationToken.None);
        TimeSpan noticed = Stopwatch.GetElapsedTime(hung);
        Assert.Contains("did not answer within 1 s", shipper.Health!.LastError, StringComparison.Ordinal);
        Assert.InRange(noticed.TotalSeconds, 0.9, 30);
        Assert.Equal(60, shipper.Health.Queued);
        output.WriteLine($"a hung connection was given up after {noticed.TotalSeconds:0.00} s (limit 1 s)");

        proxy.RequestsStalled = false;
        await ShippingBench.ShipAllAsync(shipper);

        await EveryRowIsThereOnceAsync(database, 120);
    }

    public void Dispose() => _bench.Dispose();

    /// <summary>Number, time and a figure of each row, as the database holds them, against the file itself.</summary>
    private async Task EveryRowIsThereOnceAsync(VictoriaMetrics database, int rows)
    {
        List<(long TimeMs, double Id, double TemperatureC)> journal = [];
        using (Microsoft.Data.Sqlite.SqliteConnection file = _bench.Folder.Look())
        {
            using Microsoft.Data.Sqlite.SqliteCommand command = file.CreateCommand();
            command.CommandText = "SELECT time_ms, id, booth_temperature_c FROM reading ORDER BY id";
            using Microsoft.Data.Sqlite.SqliteDataReader reader = command.ExecuteReader();
            while (reader.Read())
            {
                journal.Add((reader.GetInt64(0), reader.GetInt64(1), reader.GetDouble(2)));
            }
        }

        Assert.Equal(rows, journal.Count);
        Assert.Equal(journal.Select(row => (row.TimeMs, row.Id)), await database.SamplesAsync("booth_reading", "row_id"));
        IReadOnlyList<(long TimeMs, double Value)> temperatures = await database.SamplesAsync("booth_reading", "booth_temperature_c");
        Assert.Equal(journal.Select(row => row.TimeMs), temperatures.Select(sample => sample.TimeMs));

        // VictoriaMetrics keeps decimal numbers of limited length: it rounds in the twelfth digit or later.
        Assert.All(journal.Zip(temperatures), pair => Assert.InRange(pair.Second.Value - pair.First.TemperatureC, -1e-9, 1e-9));
        Assert.Equal(
            _bench.Folder.Ask<long>("SELECT count(*) FROM verdict_change"),
            (await database.SamplesAsync("booth_verdict_change", "row_id")).Count);
    }
}
