using BoothWatch.Film;
using BoothWatch.Jobs;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Jobs;

/// <summary>A job is the sum of its entries; none is ever lost. The rules are the project's own.</summary>
public class JobTests
{
    [Fact]
    public void Coat_MarkedAndStopped_HasItsTimes()
    {
        Job job = Sample.Job(new CoatMarked(1, Sample.Coat(10), null), new CoatStopped(1, Sample.Day.AddMinutes(16)));
        JobCoat coat = Assert.Single(job.Coats);
        Assert.Equal(Sample.Day.AddMinutes(10), coat.Details.Start);
        Assert.Equal(Sample.Day.AddMinutes(16), coat.DriesFrom);
        Assert.False(coat.IsOpen);
        Assert.Null(job.OpenCoat);
    }

    [Fact]
    public void Coat_Corrected_KeepsTheOriginalBeside()
    {
        Job job = Sample.Job(
            new CoatMarked(1, Sample.Coat(10, retarderPct: 2), null),
            new CoatCorrected(1, Sample.Coat(10, retarderPct: 7), null, "read the cup again"),
            new CoatStopped(1, Sample.Day.AddMinutes(16)));
        JobCoat coat = job.Coats[0];
        Assert.Equal(7, coat.Details.Mix.RetarderPct);
        Assert.Equal(2, coat.Original.Mix.RetarderPct);
        Assert.Equal(Sample.Day.AddMinutes(16), coat.Original.Stop);
        Assert.Equal("read the cup again", ((CoatCorrected)Assert.Single(coat.Corrections).Change).Why);
    }

    [Fact]
    public void Undo_OfACorrection_BringsTheOriginalBackAndLosesNothing()
    {
        Job job = Sample.Job(
            new CoatMarked(1, Sample.Coat(10, retarderPct: 2), null), new CoatCorrected(1, Sample.Coat(10, retarderPct: 7), null, ""), new TakenBack(3));
        Assert.Equal(2, job.Coats[0].Details.Mix.RetarderPct);
        Assert.Empty(job.Coats[0].Corrections);
        Assert.Equal(4, job.Entries.Count);
        Assert.Equal(2, job.LastUndoable!.Id);
    }

    [Fact]
    public void Undo_OfAnUndo_BringsTheEntryAgain()
    {
        Job job = Sample.Job(new CoatMarked(1, Sample.Coat(10), null), new TakenBack(2), new TakenBack(3));
        Assert.Single(job.Coats);
    }

    [Fact]
    public void Undo_OfAMark_TakesWhatWasEnteredAboutTheCoatWithIt()
    {
        Job job = Sample.Job(
            new CoatMarked(1, Sample.Coat(10), null), new CoatStopped(1, Sample.Day.AddMinutes(12)), new OutcomeMarked(1, CoatOutcome.Runs, ""), new TakenBack(2));
        Assert.Empty(job.Coats);
        Assert.Throws<JobRuleException>(() => job.With(new JobEntry(9, 1, Sample.Day, "page", new OutcomeMarked(1, CoatOutcome.Clear, ""))));
    }

    [Fact]
    public void Coats_MarkedOutOfOrder_AreInOrderOfStart()
    {
        Job job = Sample.Job(new CoatMarked(1, Sample.Coat(60, CoatKind.Clear), null), new CoatMarked(2, Sample.Coat(10, CoatKind.Flash), null));
        Assert.Equal([2L, 1L], job.Coats.Select(coat => coat.Id));
        Assert.Equal([1, 2], job.Coats.Select(coat => coat.Place));
    }

    public static TheoryData<string, JobChange[]> Misfits => new()
    {
        { "stop", [new CoatMarked(1, Sample.Coat(10), null), new CoatStopped(1, Sample.Day)] },
        { "stop", [new CoatMarked(1, Sample.Coat(10, stopMinute: 5), null)] },
        { "job", [new JobFinished(), new CoatMarked(1, Sample.Coat(10), null)] },
        { "job", [new JobFinished(), new JobFinished()] },
        { "coat", [new CoatStopped(7, Sample.Day)] },
        { "entry", [new TakenBack(1)] },
        { "entry", [new TakenBack(40)] },
        { "entry", [new CoatMarked(1, Sample.Coat(10), null), new TakenBack(2), new TakenBack(2)] },
    };

    [Theory]
    [MemberData(nameof(Misfits))]
    public void Entry_ThatDoesNotFit_IsRefusedAndNamesTheField(string field, JobChange[] changes)
    {
        JobEntry[] entries = [.. Sample.Entries(changes)];
        Job before = Job.From(entries[..^1]);
        JobRuleException refused = Assert.Throws<JobRuleException>(() => before.With(entries[^1]));
        Assert.Equal(field, refused.Field);
    }

    /// <summary>Whatever is done and undone: every entry stays, the order in which they come does not matter, and undoing all leaves the start.</summary>
    [Property]
    public bool Job_AfterAnyChanges_KeepsEveryEntryAndUndoesToTheStart(int[] picks)
    {
        Job job = Sample.Job();
        long entries = 1;
        long coats = 0;
        foreach (int pick in picks)
        {
            JobChange change = (pick & 7) switch
            {
                0 or 1 => new CoatMarked(++coats, Sample.Coat(Math.Abs(pick % 500)), null),
                2 => new CoatStopped(Math.Max(1, coats), Sample.Day.AddMinutes(pick % 500)),
                3 => new CoatCorrected(Math.Max(1, coats), Sample.Coat(pick % 500, retarderPct: pick & 15), null, ""),
                4 => new OutcomeMarked(Math.Max(1, coats / 2), CoatOutcome.Blushed, ""),
                5 => new JobFinished(),
                _ => new TakenBack(Math.Abs(pick % (entries + 1))),
            };
            try
            {
                job = job.With(new JobEntry(entries + 1, 1, Sample.Day, "page", change));
                entries++;
            }
            catch (JobRuleException)
            {
                // Refused, so nothing changed.
            }
        }

        bool kept = job.Entries.Count == entries;
        Job shuffled = Job.From(job.Entries.Reverse());
        bool same = shuffled.Coats.Select(Essence).SequenceEqual(job.Coats.Select(Essence));
        while (job.LastUndoable is { } last)
        {
            job = job.With(new JobEntry(++entries, 1, Sample.Day, "page", new TakenBack(last.Id)));
        }

        return kept && same && job.Coats.Count == 0 && job.IsRunning && job.Entries.Count == entries;
    }

    private static (long, CoatDetails, CoatDetails, CoatOutcome?) Essence(JobCoat coat) => (coat.Id, coat.Details, coat.Original, coat.Outcome);
}
