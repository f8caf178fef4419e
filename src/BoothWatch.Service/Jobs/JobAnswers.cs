using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>Makes the answers about one job and one coat.</summary>
internal sealed class JobAnswers(JobClock clock, CoatPrefill prefill, CoatAirQuery air, TimeProvider time)
{
    public JobAnswer Of(Job job)
    {
        DateTimeOffset now = time.GetUtcNow();
        JobNow state = clock.Of(job);
        return new JobAnswer(
            job.Id,
            job.Details.Piece,
            job.Details.Finish,
            job.Details.Schedule,
            job.Details.Note,
            job.Started,
            job.Finished,
            job.Entries[0].By == EntrySource.Demo,
            [.. job.Coats.Select(coat => CoatAnswer.Of(job, coat, air.Of(coat, now)))],
            [.. state.Timers.Select(timer => TimerLine.Of(timer, now))],
            state.Delay,
            state.Watch,
            job.IsRunning ? Next(job, now) : null,
            job.LastUndoable?.Id,
            job.LastUndoable is { } entry ? Words(job, entry.Change) : null);
    }

    public CoatAnswer Of(Job job, JobCoat coat) => CoatAnswer.Of(job, coat, air.Of(coat, time.GetUtcNow()));

    private static string Words(Job job, JobChange change)
    {
        string Coat(long id) => job.Coats.FirstOrDefault(coat => coat.Id == id) is { } coat ? $"{coat.Details.Kind.Word()} coat {coat.Place}" : $"coat {id}";
        return change switch
        {
            JobCorrected => "correction of the job",
            JobFinished => "end of the job",
            CoatMarked marked => $"{Coat(marked.CoatId)}",
            CoatStopped stopped => $"stop of {Coat(stopped.CoatId)}",
            CoatCorrected corrected => $"correction of {Coat(corrected.CoatId)}",
            OutcomeMarked outcome => $"outcome of {Coat(outcome.CoatId)}",
            _ => "last entry",
        };
    }

    // A material that left config/materials must not hide the job.
    private CoatDetails? Next(Job job, DateTimeOffset now)
    {
        try
        {
            return prefill.Next(job, null, now);
        }
        catch (JobRuleException)
        {
            return null;
        }
    }
}
