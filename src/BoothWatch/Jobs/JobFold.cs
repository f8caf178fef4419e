namespace BoothWatch.Jobs;

/// <summary>Adds entries up to a job.</summary>
internal sealed class JobFold
{
    private readonly Dictionary<long, JobCoat> _coats = [];
    private JobDetails? _details;
    private DateTimeOffset _started;
    private DateTimeOffset? _finished;

    public static Job Fold(IEnumerable<JobEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        JobEntry[] ordered = [.. entries.OrderBy(entry => entry.Id)];
        if (ordered.Length == 0 || ordered[0].Change is not JobStarted)
        {
            throw new ArgumentException("the first entry of a job must start it", nameof(entries));
        }

        HashSet<long> back = EntriesTakenBack(ordered);
        JobFold fold = new();
        foreach (JobEntry entry in ordered.Where(entry => !back.Contains(entry.Id)))
        {
            // What was entered about a coat goes with the coat when its mark is taken back.
            if (entry.Change is CoatMarked || entry.Change.Coat is not { } coat || fold._coats.ContainsKey(coat))
            {
                fold.Apply(entry);
            }
        }

        return fold.Result(ordered, back);
    }

    /// <summary>From the newest down, so that taking back a taking back is seen before what that one took back.</summary>
    private static HashSet<long> EntriesTakenBack(JobEntry[] ordered)
    {
        HashSet<long> back = [];
        for (int i = ordered.Length - 1; i >= 0; i--)
        {
            if (ordered[i].Change is not TakenBack(var target) || back.Contains(ordered[i].Id))
            {
                continue;
            }

            JobEntry taken = ordered.FirstOrDefault(entry => entry.Id == target && entry.Id < ordered[i].Id)
                ?? throw new JobRuleException("entry", $"entry {target} is not one of this job; give the number of an earlier entry");
            if (taken.Change is JobStarted)
            {
                throw new JobRuleException("entry", "the start of a job cannot be taken back; correct the job, or finish it");
            }

            if (!back.Add(target))
            {
                throw new JobRuleException("entry", $"entry {target} was taken back already; take back the taking back to bring it again");
            }
        }

        return back;
    }

    private void Apply(JobEntry entry)
    {
        if (_finished is not null && entry.Change is JobFinished or CoatMarked)
        {
            throw new JobRuleException("job", "the job is finished; undo that first, or start another job");
        }

        switch (entry.Change)
        {
            case JobStarted start:
                (_details, _started) = (start.Details, entry.At);
                break;
            case JobCorrected corrected:
                _details = corrected.Details;
                break;
            case JobFinished:
                _finished = entry.At;
                break;
            case CoatMarked marked:
                Check(marked.Details);
                _coats[marked.CoatId] = new JobCoat
                {
                    Id = marked.CoatId,
                    JobId = entry.JobId,
                    MarkedBy = entry.By,
                    Details = marked.Details,
                    Original = marked.Details,
                    Moment = marked.Moment,
                };
                break;
            case CoatStopped stopped:
                Stop(_coats[stopped.CoatId], stopped.Stop);
                break;
            case CoatCorrected corrected:
                Check(corrected.Details);
                JobCoat old = _coats[corrected.CoatId];
                _coats[old.Id] = old with { Details = corrected.Details, Moment = corrected.Moment, Corrections = [.. old.Corrections, entry] };
                break;
            case OutcomeMarked outcome:
                _coats[outcome.CoatId] = _coats[outcome.CoatId] with { Outcome = outcome.Outcome, OutcomeNote = outcome.Note };
                break;
        }
    }

    private void Stop(JobCoat coat, DateTimeOffset stop)
    {
        CoatDetails stopped = coat.Details with { Stop = stop };
        Check(stopped);
        _coats[coat.Id] = coat with { Details = stopped, Original = coat.Original with { Stop = stop } };
    }

    private static void Check(CoatDetails details)
    {
        if (details.Stop < details.Start)
        {
            throw new JobRuleException("stop", $"the coat would end at {details.Stop:u}, before it began at {details.Start:u}; give a later stop");
        }
    }

    private Job Result(JobEntry[] entries, HashSet<long> back) => new()
    {
        Id = entries[0].JobId,
        Started = _started,
        Finished = _finished,
        Details = _details!,
        Coats = [.. _coats.Values.OrderBy(coat => coat.Details.Start).ThenBy(coat => coat.Id).Select((coat, at) => coat with { Place = at + 1 })],
        Entries = entries,
        TakenBackEntries = back,
    };
}
