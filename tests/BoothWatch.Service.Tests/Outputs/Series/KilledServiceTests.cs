using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Commands;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>Kills the whole service, as a user runs it, with SIGKILL at random moments; the journal loses at most the last second and goes on.</summary>
public sealed class KilledServiceTests
{
    private static readonly TimeSpan StartLimit = TimeSpan.FromSeconds(90);

    [Fact]
    public async Task Service_KilledAtRandomMoments_LosesAtMostTheLastSecondAndGoesOn()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-killed-");
        try
        {
            string journal = Path.Combine(folder.FullName, JournalLocation.DemoFileName);
            var random = new Random(7);
            long rowsBefore = 0;
            for (int kill = 1; kill <= 3; kill++)
            {
                DateTimeOffset shown = await RunUntilKilledAsync(folder.FullName, TimeSpan.FromMilliseconds(random.Next(2000, 4000)));

                using var connection = new SqliteConnection($"Data Source={journal};Pooling=False");
                connection.Open();
                Assert.Equal("ok", JournalFolder.Ask<string>(connection, "PRAGMA integrity_check"));
                long rows = JournalFolder.Ask<long>(connection, "SELECT count(*) FROM reading");
                Assert.Equal(rows, JournalFolder.Ask<long>(connection, "SELECT max(id) FROM reading"));
                Assert.InRange(rows - rowsBefore, 2, long.MaxValue);
                Assert.Equal(kill, JournalFolder.Ask<long>(connection, "SELECT count(*) FROM verdict_change WHERE from_verdict IS NULL"));
                MinuteCheck.EqualsRecomputation(connection);
                HourCheck.EqualsRecomputation(connection);

                // The page had already shown an assessment of this time when the kill came.
                var newest = DateTimeOffset.FromUnixTimeMilliseconds(JournalFolder.Ask<long>(connection, "SELECT max(time_ms) FROM reading"));
                Assert.InRange(shown - newest, TimeSpan.FromDays(-1), TimeSpan.FromSeconds(1.1));
                rowsBefore = rows;
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <returns>Time of the last assessment that the page showed before the kill.</returns>
    private static async Task<DateTimeOffset> RunUntilKilledAsync(string folder, TimeSpan after)
    {
        Uri page = new($"http://127.0.0.1:{FreePort()}");
        using BuiltProgram service = new(folder, page, "run");
        using HttpClient client = new() { BaseAddress = page };
        await TimeShownAsync(client, service);
        await Task.Delay(after, TimeProvider.System);
        DateTimeOffset shown = await TimeShownAsync(client, service);
        service.Signal("KILL");
        await service.EndAsync();
        return shown;
    }

    private static async Task<DateTimeOffset> TimeShownAsync(HttpClient client, BuiltProgram service)
    {
        var watch = Stopwatch.StartNew();
        while (watch.Elapsed < StartLimit)
        {
            if (service.HasEnded)
            {
                Assert.Fail($"the service ended by itself: {await service.EndAsync()}");
            }

            try
            {
                using JsonDocument now = JsonDocument.Parse(await client.GetStringAsync(new Uri("/api/now", UriKind.Relative)));
                if (now.RootElement.GetProperty("time") is { ValueKind: JsonValueKind.String } time)
                {
                    return time.GetDateTimeOffset();
                }
            }
            catch (HttpRequestException)
            {
                // The page is not up yet.
            }

            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
        }

        throw new TimeoutException($"/api/now gave no assessment within {StartLimit.TotalSeconds} s");
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
