namespace BoothWatch.Jobs;

/// <summary>One job: a piece, its schedule and its coats, as the sum of its entries.</summary>
public sealed record Job
{
    /// <summary>Number of the job.</summary>
    public required long Id { get; init; }

    /// <summary>When it began, UTC.</summary>
    public required DateTimeOffset Started { get; init; }

    /// <summary>When it was finished, UTC; null while it runs.</summary>
    public DateTimeOffset? Finished { get; init; }

    /// <summary>What it is about.</summary>
    public required JobDetails Details { get; init; }

    /// <summary>The coats that hold, in order of start; those taken back are left out (they remain in <see cref="Entries"/>).</summary>
    public required IReadOnlyList<JobCoat> Coats { get; init; }

    /// <summary>Everything ever entered, oldest first.</summary>
    public required IReadOnlyList<JobEntry> Entries { get; init; }

    /// <summary>Numbers of the entries that are taken back at present.</summary>
    public required IReadOnlySet<long> TakenBackEntries { get; init; }

    /// <summary>The entry that an undo takes back: the latest that holds; null when only the start is left.</summary>
    public JobEntry? LastUndoable =>
        Entries.LastOrDefault(entry => entry.Change is not (JobStarted or TakenBack) && !TakenBackEntries.Contains(entry.Id));

    /// <summary>The last coat; null before the first.</summary>
    public JobCoat? LastCoat => Coats.Count > 0 ? Coats[^1] : null;

    /// <summary>The coat being sprayed; null when none is.</summary>
    public JobCoat? OpenCoat => Coats.LastOrDefault(coat => coat.IsOpen);

    /// <summary>True until it is finished.</summary>
    public bool IsRunning => Finished is null;

    /// <summary>Adds the entries up.</summary>
    /// <param name="entries">All entries of one job, in any order.</param>
    /// <exception cref="ArgumentException">There is none, or the first does not start the job.</exception>
    /// <exception cref="JobRuleException">An entry does not fit the ones before it.</exception>
    public static Job From(IEnumerable<JobEntry> entries) => JobFold.Fold(entries);

    /// <summary>The job with one more entry.</summary>
    /// <param name="entry">The entry.</param>
    /// <exception cref="JobRuleException">It does not fit; nothing has changed.</exception>
    public Job With(JobEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        if (entry.Change is not CoatMarked && entry.Change.Coat is { } coat && Coats.All(c => c.Id != coat))
        {
            string known = Coats.Count > 0 ? $"give one of: {string.Join(", ", Coats.Select(c => c.Id).Order())}" : "mark a coat first";
            throw new JobRuleException("coat", $"coat {coat} is not one of this job, or was taken back; {known}");
        }

        return JobFold.Fold([.. Entries, entry]);
    }
}
