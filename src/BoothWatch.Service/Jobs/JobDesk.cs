using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>What can be done to jobs: the one way in for the page, the button and commands. Adds time, air and margin to what was asked.</summary>
public sealed class JobDesk(JobStore store, CoatPrefill prefill, CoatMoments moments, TimeProvider time)
{
    /// <summary>Starts a job.</summary>
    public Job Start(JobDetails details, string by) => store.Start(details, time.GetUtcNow(), by);

    /// <summary>Marks the next coat of a job as beginning now, as it most likely is.</summary>
    /// <exception cref="JobRuleException">It does not fit the job.</exception>
    public Job Mark(Job job, CoatKind? kind, string by) => Mark(job, prefill.Next(job, kind, time.GetUtcNow()), by);

    /// <summary>Marks a coat.</summary>
    /// <exception cref="JobRuleException">It does not fit the job.</exception>
    public Job Mark(Job job, CoatDetails details, string by)
    {
        ArgumentNullException.ThrowIfNull(job);
        DateTimeOffset now = time.GetUtcNow();
        return store.MarkCoat(job.Id, details, moments.Of(details, now), now, by);
    }

    /// <summary>Ends a coat.</summary>
    /// <exception cref="JobRuleException">It does not fit the job.</exception>
    public Job Stop(Job job, long coatId, DateTimeOffset? stop, string by)
    {
        DateTimeOffset now = time.GetUtcNow();
        return Append(job, new CoatStopped(coatId, stop ?? now), by);
    }

    /// <summary>Corrects a coat; its margin is reckoned anew for the corrected mix and time.</summary>
    /// <exception cref="JobRuleException">It does not fit the job.</exception>
    public Job Correct(Job job, long coatId, CoatDetails details, string why, string by)
    {
        ArgumentNullException.ThrowIfNull(details);
        return Append(job, new CoatCorrected(coatId, details, moments.Of(details, time.GetUtcNow()), why), by);
    }

    /// <summary>Adds any other change.</summary>
    /// <exception cref="JobRuleException">It does not fit the job.</exception>
    public Job Append(Job job, JobChange change, string by)
    {
        ArgumentNullException.ThrowIfNull(job);
        return store.Append(job.Id, change, time.GetUtcNow(), by);
    }

    /// <summary>Takes back an entry; null: the latest that holds.</summary>
    /// <exception cref="JobRuleException">There is nothing to undo, or the rest would not fit any more.</exception>
    public Job Undo(Job job, long? entryId, string by)
    {
        ArgumentNullException.ThrowIfNull(job);
        long target = entryId ?? job.LastUndoable?.Id ?? throw new JobRuleException("entry", "there is nothing to undo on this job");
        return Append(job, new TakenBack(target), by);
    }

    /// <summary>What the button does, and a command by MQTT: ends the coat that is being sprayed, else begins the next one, on the running job with the latest entry.</summary>
    /// <param name="by">Where it was entered, of <see cref="EntrySource"/>.</param>
    /// <returns>What was done, for the log; null when no job is running.</returns>
    /// <exception cref="JobRuleException">It does not fit the job.</exception>
    public string? Press(string by)
    {
        if (store.Running() is not [var job, ..])
        {
            return null;
        }

        if (job.OpenCoat is { } open)
        {
            Stop(job, open.Id, null, by);
            return $"coat {open.Place} of job {job.Id} ({job.Details.Piece}) ended";
        }

        Job marked = Mark(job, kind: null, by);
        return $"{marked.LastCoat!.Details.Kind.Word()} coat {marked.LastCoat.Place} of job {job.Id} ({job.Details.Piece}) begun";
    }
}
