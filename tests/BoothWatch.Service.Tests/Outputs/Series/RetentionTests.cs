using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class RetentionTests : IDisposable
{
    private static readonly DateTimeOffset Now = TestAssessment.Start.AddDays(60);

    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Sweep_ClearsOldRowsInBatchesAndKeepsYoungRowsAndAllMinutes()
    {
        // 100 rows of 60 days ago, 10 of one second inside the kept span, 5 of today.
        SeriesOutput before = _folder.Output();
        before.Write(SeriesOutputTests.Seconds(100));
        before.Write(Enumerable.Range(0, 10).Select(s => TestAssessment.At(Now.AddDays(-21).AddSeconds(1 + s))));
        var output = new SeriesOutput(_folder.Journal(), _folder.Time, new Retention(21, 5, batch: 30));

        long[] left = [.. Enumerable.Range(0, 5).Select(s =>
        {
            output.Write(TestAssessment.At(Now.AddSeconds(s - 5)));
            return _folder.Ask<long>("SELECT count(*) FROM reading");
        })];

        Assert.Equal([81, 52, 23, 14, 15], left);
        Assert.Equal(101L, _folder.Ask<long>("SELECT min(id) FROM reading"));
        Assert.Equal(115L, _folder.Ask<long>("SELECT sum(count) FROM minute"));
    }

    [Fact]
    public void Sweep_AfterItIsDone_IsNotDueForAnHour()
    {
        SeriesOutput output = _folder.Output();
        output.Write(SeriesOutputTests.Seconds(10));
        output.Write(TestAssessment.At(Now));
        Assert.Equal(11L, _folder.Ask<long>("SELECT count(*) FROM reading"));

        _folder.Time.Advance(TimeSpan.FromHours(1));
        output.Write(TestAssessment.At(Now.AddHours(1)));

        Assert.Equal(2L, _folder.Ask<long>("SELECT count(*) FROM reading"));
    }

    [Fact]
    public void Sweep_WithUnprovenClock_DeletesNothing()
    {
        _folder.Output().Write(SeriesOutputTests.Seconds(10));
        _folder.Output().Write(TestAssessment.At(Now.AddYears(50), clockProven: false));

        Assert.Equal(11L, _folder.Ask<long>("SELECT count(*) FROM reading"));
    }

    [Fact]
    public void Sweep_KeepsRowsOfAnUnprovenClockUntilLaterRowsAreOld()
    {
        SeriesOutput output = _folder.Output();
        output.Write(TestAssessment.At(DateTimeOffset.UnixEpoch.AddSeconds(40), clockProven: false));
        output.Write(SeriesOutputTests.Seconds(1));
        _folder.Output().Write(TestAssessment.At(TestAssessment.Start.AddSeconds(2)));
        Assert.Equal(3L, _folder.Ask<long>("SELECT count(*) FROM reading"));

        _folder.Output().Write(TestAssessment.At(Now));

        Assert.Equal(1L, _folder.Ask<long>("SELECT count(*) FROM reading"));
    }

    [Fact]
    public void Sweep_ClearsMinutesAndChangesAfterTheirYears()
    {
        _folder.Output().Write(SeriesOutputTests.Seconds(120));
        _folder.Output().Write(TestAssessment.At(TestAssessment.Start.AddYears(5).AddMinutes(-1)));
        Assert.Equal(3L, _folder.Ask<long>("SELECT count(*) FROM minute"));

        _folder.Output().Write(TestAssessment.At(TestAssessment.Start.AddYears(5).AddMinutes(1)));

        Assert.Equal(3L, _folder.Ask<long>("SELECT count(*) FROM minute"));
        Assert.Equal(TestAssessment.Start.AddMinutes(1).ToUnixTimeMilliseconds(), _folder.Ask<long>("SELECT min(minute_ms) FROM minute"));
        Assert.Equal(2L, _folder.Ask<long>("SELECT count(*) FROM verdict_change"));
    }

    [Fact]
    public void Sweep_GivesPagesBackToTheFileSystem()
    {
        Journal journal = _folder.Journal();
        new SeriesOutput(journal, new SeriesOptions(), _folder.Time).Write(SeriesOutputTests.Seconds(5000));
        long before = _folder.Ask<long>("PRAGMA page_count");
        var retention = new Retention(21, 5, batch: 600);

        bool more = true;
        int sweeps = 0;
        while (more)
        {
            journal.Write(durable: false, connection => more = retention.Sweep(connection, Now));
            sweeps++;
        }

        Assert.InRange(sweeps, 9, 10);
        using SqliteConnection connection = _folder.Look();
        Assert.InRange(JournalFolder.Ask<long>(connection, "PRAGMA freelist_count"), 0, 64);
        Assert.InRange(JournalFolder.Ask<long>(connection, "PRAGMA page_count"), 1, before / 3);
    }
}
