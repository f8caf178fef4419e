using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Outputs;
using BoothWatch.Service.Tests.Outputs.Influx;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;
using Xunit.Abstractions;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>The real program is killed in the midst of shipping, over and over.</summary>
public sealed class KilledWhileShippingTests(ITestOutputHelper output)
{
    private const int Backlog = 4000;

    [DatabaseFact]
    public async Task Program_KilledWhileItShips_LeavesNoGapAndNoDuplicateAfterARestart()
    {
        // The database keeps one sample a series and timestamp, as InfluxDB does.
        await using VictoriaMetrics database = await VictoriaMetrics.StartAsync(deduplicate: true);
        await using var proxy = new StallingProxy(database.Port);
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-killed-");
        try
        {
            string path = Path.Combine(folder.FullName, JournalLocation.DemoFileName);
            WriteBacklog(path);
            var influx = new { url = proxy.Url, batchRows = 20, everyS = 0.1 };
            int midway = 0;
            foreach (string moment in (string[])["anywhere", "before the database has the request", "after it has, before the answer"])
            {
                long before = Mark(path);
                await using BoothProcess booth = await BoothProcess.StartAsync(folder.FullName, influx);
                while (Mark(path) < Math.Min(before + 200, Backlog))
                {
                    await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
                }

                // The pause lets the request in hand run into the stall.
                proxy.RequestsStalled = moment.StartsWith("before", StringComparison.Ordinal);
                proxy.AnswersStalled = moment.StartsWith("after", StringComparison.Ordinal);
                await Task.Delay(TimeSpan.FromMilliseconds(moment == "anywhere" ? 0 : 300), TimeProvider.System);
                await booth.KillAsync();
                (proxy.RequestsStalled, proxy.AnswersStalled) = (false, false);
                midway += Mark(path) < Backlog ? 1 : 0;
                output.WriteLine($"killed {moment}, with the mark at row {Mark(path)} of {Backlog}");
            }

            Assert.True(midway == 3, "a kill came after all was shipped: it proved nothing");

            await using (BoothProcess last = await BoothProcess.StartAsync(folder.FullName, influx))
            {
                await last.UntilAsync("/api/health", health =>
                    BoothProcess.OutputOf(health, "influx") is var shipping
                    && shipping.GetProperty("handled").GetInt64() > 0 && shipping.GetProperty("backlog").GetInt64() == 0
                    && Mark(path) > Backlog);
            }

            // The last kill may have come with a second or two unshipped: up to the mark everything must be there.
            long mark = Mark(path);
            (long TimeMs, double Id)[] journal = Rows(path, mark);
            Assert.Equal(mark, journal.Length);
            IReadOnlyList<(long TimeMs, double Value)> stored = await database.SamplesAsync("booth_reading", "row_id");
            Assert.Equal(journal, stored.Where(sample => sample.Value <= mark));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void WriteBacklog(string path)
    {
        DateTimeOffset start = TimeProvider.System.GetUtcNow().AddSeconds(-Backlog - 60);
        using var journal = new Journal(new JournalLocation(path, IsDemo: true), TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        new SeriesOutput(journal, new SeriesOptions(), TimeProvider.System).Write(
            Enumerable.Range(0, Backlog).Select(s => TestAssessment.At(start.AddSeconds(s), temperatureC: 20 + (s / 1000.0))));
    }

    private static long Mark(string path)
    {
        using var file = new SqliteConnection($"Data Source={path};Pooling=False");
        file.Open();
        return JournalFolder.Ask<long>(file, "SELECT ifnull((SELECT last_id FROM shipment WHERE source = 'reading'), 0)");
    }

    private static (long TimeMs, double Id)[] Rows(string path, long upTo)
    {
        using var file = new SqliteConnection($"Data Source={path};Pooling=False");
        file.Open();
        using SqliteCommand command = file.CreateCommand();
        command.CommandText = $"SELECT time_ms, id FROM reading WHERE id <= {upTo} ORDER BY time_ms";
        using SqliteDataReader reader = command.ExecuteReader();
        List<(long, double)> rows = [];
        while (reader.Read())
        {
            rows.Add((reader.GetInt64(0), reader.GetInt64(1)));
        }

        return [.. rows];
    }
}
