using System.Globalization;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Jobs;

/// <summary>Kills a process that marks coats with SIGKILL and looks at what it left.</summary>
public sealed class KilledWhileMarkingTests
{
    [Fact]
    public async Task Jobs_WhoseWriterIsKilled_KeepEveryAcknowledgedEntryAndTheirLists()
    {
        using var folder = new JournalFolder();
        Random random = new(20261125);
        long acknowledged = 0;
        for (int kill = 0; kill < 3; kill++)
        {
            acknowledged = await WriteUntilKilled(folder.Location.Path, TimeSpan.FromMilliseconds(random.Next(50, 500)));
            using SqliteConnection connection = folder.Look();
            Assert.Equal("ok", JournalFolder.Ask<string>(connection, "PRAGMA integrity_check"));
            long rows = JournalFolder.Ask<long>(connection, "SELECT count(*) FROM job_entry");
            Assert.Equal(rows, JournalFolder.Ask<long>(connection, "SELECT max(id) FROM job_entry"));
            Assert.InRange(rows, acknowledged, long.MaxValue);

            JobStore store = new(folder.Journal(), folder.Location);
            long coats = 0;
            for (long id = 1; store.Find(id) is { } job; id++)
            {
                RowPage<CoatRow> listed = store.Coats(new CoatQuery { JobId = id });
                Assert.Equal(
                    job.Coats.Select(coat => (coat.Id, coat.Details.Stop, coat.Outcome)),
                    listed.Rows.Reverse().Select(row => (row.Id, row.Stop, row.Outcome)));
                coats += job.Coats.Count;
            }

            Assert.Equal(coats, store.Coats(new CoatQuery()).Total);
        }

        Assert.True(acknowledged > 10, $"only {acknowledged} entries were written: the kills proved little");
    }

    private static async Task<long> WriteUntilKilled(string path, TimeSpan after) => long.Parse(
        (await KilledWriter.RunAsync(JobWriter.Command, path, after, patience: TimeSpan.FromSeconds(90)))[^1], CultureInfo.InvariantCulture);
}
