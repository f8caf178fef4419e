namespace BoothWatch.Jobs;

/// <summary>A change with its number and time: one row that is only ever added.</summary>
/// <param name="Id">Number of the entry; rises.</param>
/// <param name="JobId">The job.</param>
/// <param name="At">When it was entered, UTC (a coat can have begun earlier).</param>
/// <param name="By">Where it was entered: <c>page</c>, <c>button</c>, <c>demo</c>.</param>
/// <param name="Change">What was done.</param>
public sealed record JobEntry(long Id, long JobId, DateTimeOffset At, string By, JobChange Change);
