namespace BoothWatch.Jobs;

/// <summary>One thing that was done to a job. A job is the sum of its changes; none is ever edited or removed.</summary>
public abstract record JobChange
{
    private protected JobChange()
    {
    }

    /// <summary>The coat that the change is about; null when it is about the job.</summary>
    public virtual long? Coat => null;
}

/// <summary>The job began.</summary>
/// <param name="Details">What it is about.</param>
public sealed record JobStarted(JobDetails Details) : JobChange;

/// <summary>What the job is about was corrected.</summary>
/// <param name="Details">What holds from now on.</param>
/// <param name="Why">The reason, in the shop's words; may be empty.</param>
public sealed record JobCorrected(JobDetails Details, string Why) : JobChange;

/// <summary>The job is done: no more coats, timers or watch.</summary>
public sealed record JobFinished : JobChange;

/// <summary>A coat was begun.</summary>
/// <param name="CoatId">The number that the coat has from now on.</param>
/// <param name="Details">What it is.</param>
/// <param name="Moment">The air it was begun in; null when it was not known.</param>
public sealed record CoatMarked(long CoatId, CoatDetails Details, CoatMoment? Moment) : JobChange
{
    /// <inheritdoc/>
    public override long? Coat => CoatId;
}

/// <summary>A coat was ended.</summary>
/// <param name="CoatId">The coat.</param>
/// <param name="Stop">When, UTC.</param>
public sealed record CoatStopped(long CoatId, DateTimeOffset Stop) : JobChange
{
    /// <inheritdoc/>
    public override long? Coat => CoatId;
}

/// <summary>What a coat was is corrected; the original stays beside it.</summary>
/// <param name="CoatId">The coat.</param>
/// <param name="Details">What holds from now on.</param>
/// <param name="Moment">The air of the corrected coat; null when it is not known.</param>
/// <param name="Why">The reason, in the shop's words; may be empty.</param>
public sealed record CoatCorrected(long CoatId, CoatDetails Details, CoatMoment? Moment, string Why) : JobChange
{
    /// <inheritdoc/>
    public override long? Coat => CoatId;
}

/// <summary>How a coat came out; the latest word holds.</summary>
/// <param name="CoatId">The coat.</param>
/// <param name="Outcome">How it came out.</param>
/// <param name="Note">In the shop's words; may be empty.</param>
public sealed record OutcomeMarked(long CoatId, CoatOutcome Outcome, string Note) : JobChange
{
    /// <inheritdoc/>
    public override long? Coat => CoatId;
}

/// <summary>An earlier entry is taken back (undone). To take back a taking back brings the entry back.</summary>
/// <param name="EntryId">The entry taken back.</param>
public sealed record TakenBack(long EntryId) : JobChange;
