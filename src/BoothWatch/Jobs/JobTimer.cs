namespace BoothWatch.Jobs;

/// <summary>One thing that a job waits for.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="What">What may be done then, for people.</param>
/// <param name="From">When the wait began, UTC.</param>
/// <param name="Planned">The wait of the schedule, in the reference air.</param>
/// <param name="Due">When it is over, UTC; null while nobody can say (the film does not set in this air).</param>
/// <param name="Why">Why the wait is longer than planned, or what is not known; empty when there is nothing to say.</param>
public sealed record JobTimer(JobTimerKind Kind, string What, DateTimeOffset From, TimeSpan Planned, DateTimeOffset? Due, string Why)
{
    /// <summary>The wait with what the air adds; null while nobody can say.</summary>
    public TimeSpan? Wait => Due - From;

    /// <summary>What is left at a time, zero when over; null while nobody can say.</summary>
    public TimeSpan? LeftAt(DateTimeOffset now) => Due is { } due ? (due > now ? due - now : TimeSpan.Zero) : null;
}
