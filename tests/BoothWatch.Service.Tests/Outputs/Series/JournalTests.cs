using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class JournalTests : IDisposable
{
    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Open_OfANewFile_SetsWalVersionAndVacuum()
    {
        _folder.Output().Write(SeriesOutputTests.Seconds(1));

        using SqliteConnection connection = _folder.Look();
        Assert.Equal("wal", JournalFolder.Ask<string>(connection, "PRAGMA journal_mode"));
        Assert.Equal((long)JournalSchema.Version, JournalFolder.Ask<long>(connection, "PRAGMA user_version"));
        Assert.Equal(2L, JournalFolder.Ask<long>(connection, "PRAGMA auto_vacuum"));
    }

    [Fact]
    public void Migrate_FromVersionZeroThenByOneStep_KeepsTheRows()
    {
        string[] first = ["CREATE TABLE a (x INTEGER); INSERT INTO a VALUES (7)"];
        string[] both = [.. first, "ALTER TABLE a ADD COLUMN y INTEGER NOT NULL DEFAULT 3"];
        using SqliteConnection connection = _folder.Look();

        JournalSchema.Migrate(connection, first);
        JournalSchema.Migrate(connection, first);
        Assert.Equal(1L, JournalFolder.Ask<long>(connection, "PRAGMA user_version"));
        JournalSchema.Migrate(connection, both);

        Assert.Equal(2L, JournalFolder.Ask<long>(connection, "PRAGMA user_version"));
        Assert.Equal(10L, JournalFolder.Ask<long>(connection, "SELECT sum(x + y) FROM a"));
    }

    [Fact]
    public void Migrate_WithAStepThatFails_LeavesTheVersionBefore()
    {
        using SqliteConnection connection = _folder.Look();

        Assert.Throws<SqliteException>(() => JournalSchema.Migrate(connection, ["CREATE TABLE a (x)", "CREATE TABLE b (x); CREATE TABLE a (x)"]));

        Assert.Equal(1L, JournalFolder.Ask<long>(connection, "PRAGMA user_version"));
        Assert.Equal(0L, JournalFolder.Ask<long>(connection, "SELECT count(*) FROM sqlite_master WHERE name = 'b'"));
    }

    [Fact]
    public void Write_ToAJournalOfANewerProgram_IsRefusedAndTheFileKept()
    {
        using (SqliteConnection connection = _folder.Look())
        {
            JournalFolder.Ask<object?>(connection, "PRAGMA user_version = 999");
        }

        JournalException error = Assert.Throws<JournalException>(() => _folder.Output().Write(SeriesOutputTests.Seconds(1)));

        Assert.Contains("newer BoothWatch", error.Message, StringComparison.Ordinal);
        Assert.Equal(999L, _folder.Ask<long>("PRAGMA user_version"));
    }

    [Fact]
    public void Write_ToAFileThatIsNoDatabase_SetsItAsideAndStartsANewOne()
    {
        File.WriteAllText(_folder.Location.Path, new string('x', 10_000));
        var log = new CapturedLog<Journal>();
        new SeriesOutput(_folder.Journal(log), new SeriesOptions(), _folder.Time).Write(SeriesOutputTests.Seconds(3));

        string aside = Assert.Single(Directory.GetFiles(_folder.Folder, "journal.damaged-*.db"));
        Assert.Equal("journal.damaged-20260907T080000Z.db", Path.GetFileName(aside));
        Assert.Equal(new string('x', 10_000), File.ReadAllText(aside));
        Assert.Equal(3L, _folder.Ask<long>("SELECT count(*) FROM reading"));
        Assert.Contains(log.Entries, e => e.Level == LogLevel.Error && e.Message.Contains(aside, StringComparison.Ordinal));
    }

    [Fact]
    public void Write_AfterPagesWereOverwritten_SetsTheFileAsideAtTheNextAttempt()
    {
        using (Journal journal = _folder.Journal())
        {
            new SeriesOutput(journal, new SeriesOptions(), _folder.Time).Write(SeriesOutputTests.Seconds(2000));
        }

        byte[] bytes = File.ReadAllBytes(_folder.Location.Path);
        Array.Fill(bytes, (byte)0xA5, 4096, bytes.Length - 4096);
        File.WriteAllBytes(_folder.Location.Path, bytes);
        SeriesOutput output = _folder.Output();

        Exception? first = Record.Exception(() => output.Write(SeriesOutputTests.Seconds(1, from: 3000)));
        if (first is not null)
        {
            Assert.Contains("damaged", Assert.IsType<JournalException>(first).Message, StringComparison.Ordinal);
            output.Write(SeriesOutputTests.Seconds(1, from: 3000));
        }

        Assert.Equal(1L, _folder.Ask<long>("SELECT count(*) FROM reading"));
        Assert.Equal(bytes, File.ReadAllBytes(Assert.Single(Directory.GetFiles(_folder.Folder, "journal.damaged-*.db"))));
    }

    [Fact]
    public void Write_WhileAnotherProgramHoldsTheFile_SaysSoAndGoesOnAfterwards()
    {
        SeriesOutput output = _folder.Output();
        output.Write(SeriesOutputTests.Seconds(1));
        using (SqliteConnection other = _folder.Look())
        {
            using SqliteTransaction holding = other.BeginTransaction(deferred: false);
            JournalException error = Assert.Throws<JournalException>(() => output.Write(SeriesOutputTests.Seconds(1, from: 1)));
            Assert.Contains("locked by another program", error.Message, StringComparison.Ordinal);
        }

        output.Write(SeriesOutputTests.Seconds(1, from: 1));

        Assert.Equal(2L, _folder.Ask<long>("SELECT count(*) FROM reading"));
    }

    [Fact]
    public void Write_WhenTheDiskIsFull_SaysSoAndGoesOnOnceThereIsSpace()
    {
        Journal journal = _folder.Journal();
        var output = new SeriesOutput(journal, new SeriesOptions(), _folder.Time);
        output.Write(SeriesOutputTests.Seconds(10));
        LimitPages(journal, _folder.Ask<long>("PRAGMA page_count"));

        // SQLite's own limit gives the same result code, SQLITE_FULL, as a disk without space.
        int written = 10;
        JournalException? error = null;
        while (error is null && written < 10_000)
        {
            error = Record.Exception(() => output.Write(SeriesOutputTests.Seconds(1, from: written))) as JournalException;
            written += error is null ? 1 : 0;
        }

        Assert.Contains("is full: free space", error?.Message, StringComparison.Ordinal);
        Assert.Contains(_folder.Location.Path, error!.Message, StringComparison.Ordinal);
        LimitPages(journal, 1_000_000);
        output.Write(SeriesOutputTests.Seconds(20, from: written));

        using SqliteConnection connection = _folder.Look();
        Assert.Equal(written + 20L, JournalFolder.Ask<long>(connection, "SELECT count(*) FROM reading"));
        Assert.Equal(written + 20L, JournalFolder.Ask<long>(connection, "SELECT max(id) FROM reading"));
        MinuteCheck.EqualsRecomputation(connection);
    }

    [Fact]
    public async Task Pump_OverAFullDisk_StaysUpReportsItAndCatchesUp()
    {
        Journal journal = _folder.Journal();
        var output = new SeriesOutput(journal, new SeriesOptions(), _folder.Time);
        output.Write(SeriesOutputTests.Seconds(1));
        LimitPages(journal, _folder.Ask<long>("PRAGMA page_count"));
        using var pump = new OutputPump(output, new OutputPumpOptions(), _folder.Time, NullLogger<OutputPump>.Instance);
        await pump.StartAsync(CancellationToken.None);

        foreach (BoothWatch.Verdicts.Assessment assessment in SeriesOutputTests.Seconds(200, from: 1))
        {
            pump.Post(assessment);
        }

        await UntilAsync(() => pump.Health.IsFailing);
        Assert.Contains("is full", pump.Health.LastError, StringComparison.Ordinal);
        LimitPages(journal, 1_000_000);
        await UntilAsync(() => pump.Health.Handled == 200);
        await pump.StopAsync(CancellationToken.None);

        Assert.Equal((0L, 0), (pump.Health.Dropped, pump.Health.FailuresInARow));
        Assert.Equal(201L, _folder.Ask<long>("SELECT count(*) FROM reading"));
    }

    [Fact]
    public void Write_WhereAFileStandsInForTheFolder_NamesTheFileAndTheSetting()
    {
        string notAFolder = Path.Combine(_folder.Folder, "file");
        File.WriteAllText(notAFolder, "");
        using var journal = new Journal(
            new JournalLocation(Path.Combine(notAFolder, "journal.db"), IsDemo: false), TimeSpan.Zero, _folder.Time, NullLogger<Journal>.Instance);

        JournalException error = Assert.Throws<JournalException>(() =>
            new SeriesOutput(journal, new SeriesOptions(), _folder.Time).Write(SeriesOutputTests.Seconds(1)));

        Assert.Contains(Path.Combine(notAFolder, "journal.db"), error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(14)]
    public void Trouble_OfAFolderThatCannotBeWritten_NamesTheFolderAndTheSetting(int code)
    {
        string message = JournalTrouble.Explain(new SqliteException("x", code), "/var/lib/boothwatch/journal.db");

        Assert.Equal(
            "/var/lib/boothwatch/journal.db cannot be written: give this user write permission for /var/lib/boothwatch, or name another folder in series:folder",
            message);
    }

    [Fact]
    public void Write_ForcesToDiskAtOnceWhenAskedAndOtherwiseEverySyncInterval()
    {
        Journal journal = _folder.Journal(syncEveryS: 10);
        long Synchronous(bool durable)
        {
            long mode = 0;
            journal.Write(durable, connection => mode = JournalFolder.Ask<long>(connection, "PRAGMA synchronous"));
            return mode;
        }

        const long Normal = 1, Full = 2;
        Assert.Equal(Normal, Synchronous(durable: false));
        Assert.Equal(Full, Synchronous(durable: true));
        _folder.Time.Advance(TimeSpan.FromSeconds(9));
        Assert.Equal(Normal, Synchronous(durable: false));
        _folder.Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(Full, Synchronous(durable: false));
        Assert.Equal(Normal, Synchronous(durable: false));
    }

    private static void LimitPages(Journal journal, long pages) =>
        journal.Write(durable: false, connection => JournalFolder.Ask<long>(connection, $"PRAGMA max_page_count = {pages}"));

    private async Task UntilAsync(Func<bool> condition)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        while (!condition())
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), "not so after 30 s");
            _folder.Time.Advance(TimeSpan.FromSeconds(1));
            await Task.Yield();
        }
    }
}
