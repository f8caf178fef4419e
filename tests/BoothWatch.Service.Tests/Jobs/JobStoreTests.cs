using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Tests.Outputs;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Jobs;

/// <summary>Jobs in a real journal.</summary>
public sealed class JobStoreTests : IDisposable
{
    private readonly JournalFolder _folder = new();
    private readonly JobStore _store;

    public JobStoreTests() => _store = new JobStore(_folder.Journal(), _folder.Location);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Store_WithoutJournal_ReadsAsEmpty()
    {
        Assert.Null(_store.Find(1));
        Assert.Null(_store.FindByCoat(1));
        Assert.Empty(_store.Running());
        Assert.Equal(0, _store.Jobs(new JobQuery()).Total);
    }

    [Fact]
    public void Job_ReadAgain_IsAsItWasWritten()
    {
        Job job = _store.Start(new JobDetails("side table", "satin", "touch-up", "left leg"), TestJob.Day, EntrySource.Page);
        job = _store.MarkCoat(job.Id, TestJob.Coat(10), TestJob.Moment(0.4), TestJob.Day, EntrySource.Button);
        job = _store.Append(job.Id, new CoatStopped(job.LastCoat!.Id, TestJob.Day.AddMinutes(16)), TestJob.Day, EntrySource.Page);
        job = _store.Append(job.Id, new CoatCorrected(job.LastCoat!.Id, TestJob.Coat(10, stop: 17, retarderPct: 7), TestJob.Moment(1.5), "cup"), TestJob.Day, EntrySource.Page);
        job = _store.Append(job.Id, new OutcomeMarked(job.LastCoat!.Id, CoatOutcome.DrySpray, "rough"), TestJob.Day, EntrySource.Page);

        Job again = new JobStore(_folder.Journal(), _folder.Location).Find(job.Id)!;
        Assert.Equal(job.Entries, again.Entries);
        JobCoat coat = Assert.Single(again.Coats);
        Assert.Equal(7, coat.Details.Mix.RetarderPct);
        Assert.Equal(0, coat.Original.Mix.RetarderPct);
        Assert.Equal(TestJob.Moment(1.5), coat.Moment);
        Assert.Equal("button", coat.MarkedBy);
        Assert.Equal(CoatOutcome.DrySpray, coat.Outcome);
        Assert.Equal(job.Id, _store.FindByCoat(coat.Id)!.Id);
    }

    [Fact]
    public void Coat_WhosePieceWasNotKnown_IsReadAgain()
    {
        Job job = _store.Start(TestJob.Details, TestJob.Day, EntrySource.Page);
        CoatMoment moment = TestJob.Moment(0.4) with { PieceTemperatureC = null, BlushMarginC = null, MarginUncertaintyC = null, RecommendedRetarderPct = null };
        job = _store.MarkCoat(job.Id, TestJob.Coat(10), moment, TestJob.Day, EntrySource.Page);
        Assert.Equal(moment, Assert.Single(_store.Find(job.Id)!.Coats).Moment);
    }

    [Fact]
    public void MarkCoat_WhileOneIsOpen_EndsThatOne()
    {
        Job job = _store.Start(TestJob.Details, TestJob.Day, EntrySource.Page);
        _store.MarkCoat(job.Id, TestJob.Coat(10), null, TestJob.Day, EntrySource.Page);
        job = _store.MarkCoat(job.Id, TestJob.Coat(30), null, TestJob.Day, EntrySource.Page);
        Assert.Equal(TestJob.Day.AddMinutes(30), job.Coats[0].Details.Stop);
        Assert.True(job.Coats[1].IsOpen);
    }

    [Fact]
    public void Change_ThatDoesNotFit_WritesNothing()
    {
        Job job = _store.Start(TestJob.Details, TestJob.Day, EntrySource.Page);
        Assert.Throws<JobRuleException>(() => _store.Append(job.Id, new CoatStopped(5, TestJob.Day), TestJob.Day, EntrySource.Page));
        Assert.Throws<JobRuleException>(() => _store.Append(99, new JobFinished(), TestJob.Day, EntrySource.Page));
        Assert.Equal(1, _folder.Ask<long>("SELECT count(*) FROM job_entry"));
    }

    [Fact]
    public void Entries_InTheFile_CannotBeEditedOrRemoved()
    {
        _store.Start(TestJob.Details, TestJob.Day, EntrySource.Page);
        using SqliteConnection connection = _folder.Look();
        foreach (string sql in new[] { "DELETE FROM job_entry", "UPDATE job_entry SET fields = '{}'" })
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = sql;
            Assert.Contains("only ever added", Assert.Throws<SqliteException>(() => command.ExecuteNonQuery()).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Lists_AreWhatTheEntriesSay()
    {
        for (int i = 0; i < 5; i++)
        {
            Job job = _store.Start(TestJob.Details with { Piece = i == 3 ? "Stühlchen" : $"table {i}" }, TestJob.Day.AddDays(i), EntrySource.Page);
            job = _store.MarkCoat(job.Id, TestJob.Coat((i * 1440) + 10, stop: (i * 1440) + 15), TestJob.Moment(i - 2), TestJob.Day, EntrySource.Page);
            if (i % 2 == 0)
            {
                _store.Append(job.Id, new OutcomeMarked(job.LastCoat!.Id, i == 0 ? CoatOutcome.Blushed : CoatOutcome.Clear, ""), TestJob.Day, EntrySource.Page);
            }

            if (i == 4)
            {
                job = _store.MarkCoat(job.Id, TestJob.Coat((i * 1440) + 30), null, TestJob.Day, EntrySource.Page);
                _store.Append(job.Id, new TakenBack(job.LastUndoable!.Id), TestJob.Day, EntrySource.Page);
                _store.Append(job.Id, new JobFinished(), TestJob.Day, EntrySource.Page);
            }
        }

        Assert.Equal([5L, 4, 3, 2, 1], _store.Jobs(new JobQuery()).Rows.Select(row => row.Id));
        Assert.Equal([3L, 2], _store.Jobs(new JobQuery { Skip = 2, Take = 2 }).Rows.Select(row => row.Id));
        Assert.Equal(5, _store.Jobs(new JobQuery { Skip = 2, Take = 2 }).Total);
        Assert.Equal([4L], _store.Jobs(new JobQuery { Piece = "STÜHL" }).Rows.Select(row => row.Id));
        Assert.Equal([5L], _store.Jobs(new JobQuery { Running = false }).Rows.Select(row => row.Id));
        Assert.Equal([2L], _store.Jobs(new JobQuery { From = TestJob.Day.AddDays(1), To = TestJob.Day.AddDays(2) }).Rows.Select(row => row.Id));
        Assert.Equal(1, _store.Jobs(new JobQuery()).Rows[^1].Blushed);
        Assert.Equal([1L], _store.Coats(new CoatQuery { Outcome = CoatOutcome.Blushed }).Rows.Select(row => row.JobId));
        Assert.Equal([5L, 3, 1], _store.Coats(new CoatQuery { OutcomeKnown = true }).Rows.Select(row => row.JobId));
        Assert.Equal([2L, 1], _store.Coats(new CoatQuery { MarginToC = -1 }).Rows.Select(row => row.JobId));
        Assert.Equal([4L, 3], _store.Coats(new CoatQuery { MarginFromC = 0, MarginToC = 1 }).Rows.Select(row => row.JobId));
        Assert.Equal(0, _store.Coats(new CoatQuery { Kind = CoatKind.Sealer }).Total);
        Assert.Equal(5, _store.Coats(new CoatQuery()).Total);
        Assert.Equal([4L, 3, 2, 1], _store.Running().Select(job => job.Id));
    }

    [Fact]
    public void Air_OfACoat_IsThatOfItsRowsAndWithoutThemOfItsMinutes()
    {
        _folder.Output().Write(Enumerable.Range(0, 180).Select(s => TestAssessment.At(
            TestAssessment.Start.AddSeconds(s), temperatureC: 20 + (s / 60), marginC: 3 - (s / 60), verdict: s < 120 ? Verdict.Spray : Verdict.SlowDown)));
        CoatAirQuery query = new(_folder.Location);
        JobCoat coat = TestJob.CoatAt(TestAssessment.Start, TestAssessment.Start.AddSeconds(150));

        CoatAir air = query.Of(coat, TestAssessment.Start.AddDays(1));
        Assert.True(air.FromRows);
        Assert.Equal(150, air.Count);
        Assert.Equal(((60 * 20.0) + (60 * 21) + (30 * 22)) / 150, air.TemperatureC!.Mean, 9);
        Assert.Equal((20.0, 22.0), (air.TemperatureC.Min, air.TemperatureC.Max));
        Assert.Equal(1.0, air.BlushMarginC!.Min);
        Assert.Equal(Verdict.SlowDown, air.WorstVerdict);

        using (SqliteConnection connection = _folder.Look())
        using (SqliteCommand clear = connection.CreateCommand())
        {
            clear.CommandText = "DELETE FROM reading";
            clear.ExecuteNonQuery();
        }

        CoatAir fromMinutes = query.Of(coat, TestAssessment.Start.AddDays(1));
        Assert.False(fromMinutes.FromRows);
        Assert.Equal(180, fromMinutes.Count);
        Assert.Equal(21, fromMinutes.TemperatureC!.Mean, 9);
        Assert.Equal(0, query.Of(TestAssessment.Start.AddDays(3), TestAssessment.Start.AddDays(4)).Count);
    }
}
