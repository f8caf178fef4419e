using System.Globalization;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>Kills a real writing process with SIGKILL at random moments and looks at what it left.</summary>
public sealed class CrashTests
{
    [Fact]
    public async Task Journal_WhoseWriterIsKilledInMidWrite_KeepsEveryAcknowledgedRow()
    {
        using var folder = new JournalFolder();
        var random = new Random(20260907);
        long rowsBefore = 0;
        for (int kill = 1; kill <= 6; kill++)
        {
            long acknowledged = await WriteUntilKilledAsync(folder.Location.Path, TimeSpan.FromMilliseconds(random.Next(20, 400)));

            using SqliteConnection connection = folder.Look();
            Assert.Equal("ok", JournalFolder.Ask<string>(connection, "PRAGMA integrity_check"));
            long rows = JournalFolder.Ask<long>(connection, "SELECT count(*) FROM reading");
            Assert.Equal(rows, JournalFolder.Ask<long>(connection, "SELECT max(id) FROM reading"));

            // At most the one transaction that was being acknowledged may be there beyond what was printed.
            Assert.InRange(rows - rowsBefore, acknowledged, acknowledged + 1);
            Assert.Equal(kill, JournalFolder.Ask<long>(connection, "SELECT count(*) FROM verdict_change"));
            MinuteCheck.EqualsRecomputation(connection);
            HourCheck.EqualsRecomputation(connection);
            rowsBefore = rows;
        }

        Assert.True(rowsBefore > 100, $"the writer wrote only {rowsBefore} rows: the kills proved little");
    }

    [Fact]
    public async Task OldJournal_WhoseWriterIsKilledWhileItMakesHours_HasEachHourMadeOrDue()
    {
        // Four years with one minute an hour: 35,040 hours, made 48 at a time between rows.
        using var folder = new JournalFolder();
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        OldJournal.Create(folder, now.AddDays(-4 * 365), 4 * 365 * 24, everyMinutes: 60);
        var random = new Random(20261025);
        List<int> made = [0];
        for (int kill = 1; kill <= 4; kill++)
        {
            await WriteUntilKilledAsync(folder.Location.Path, TimeSpan.FromMilliseconds(random.Next(10, 60)));

            using SqliteConnection connection = folder.Look();
            Assert.Equal("ok", JournalFolder.Ask<string>(connection, "PRAGMA integrity_check"));
            made.Add(HourCheck.EqualsRecomputation(connection).Made);
            Assert.True(made[^1] > made[^2], "nothing was made before the kill");
        }

        Assert.InRange(made[1], 48, 35_000);
        var output = new SeriesOutput(folder.Journal(), new SeriesOptions(), TimeProvider.System);
        for (int second = 0; folder.Ask<long>("SELECT count(*) FROM hour_due") > 1 || second == 0; second++)
        {
            Assert.True(second < 800, "the rest was not made");
            output.Write(TestAssessment.At(now.AddHours(1).AddSeconds(second)));
        }

        using SqliteConnection look = folder.Look();
        Assert.InRange(HourCheck.EqualsRecomputation(look).Made, 35_040, 35_042);
    }

    private static async Task<long> WriteUntilKilledAsync(string path, TimeSpan after) => long.Parse(
        (await KilledWriter.RunAsync(JournalWriterProcess.Command, path, after, patience: TimeSpan.FromSeconds(60)))[^1], CultureInfo.InvariantCulture);
}
