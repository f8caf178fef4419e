namespace BoothWatch.Service.Outputs.Pump;

/// <summary>How an output is doing, as data for the page and the logs. A failing output is shown, never hidden.</summary>
/// <param name="Name">Name of the output.</param>
/// <param name="Handled">Assessments handled since start.</param>
/// <param name="Dropped">Assessments lost to this output since start: queue full, given up, or left over at stop.</param>
/// <param name="Failures">Failed attempts since start.</param>
/// <param name="FailuresInARow">Failed attempts since the last success; 0 while the output works.</param>
/// <param name="Queued">What waits now: assessments, or what the output itself has to do.</param>
/// <param name="LastSuccess">Time of the last success, UTC; null when there was none.</param>
/// <param name="LastError">The last error in words; null when there was none. Stays after recovery.</param>
/// <param name="LastErrorTime">Time of the last error, UTC; null when there was none.</param>
public sealed record OutputHealth(
    string Name,
    long Handled,
    long Dropped,
    long Failures,
    int FailuresInARow,
    int Queued,
    DateTimeOffset? LastSuccess,
    string? LastError,
    DateTimeOffset? LastErrorTime)
{
    /// <summary>Age of the oldest of what waits, by the wall clock; null when nothing waits.</summary>
    public TimeSpan? OldestWaiting { get; init; }

    /// <summary>What the receiver refused for good, kept with the reason; 0 for an output that keeps no such thing.</summary>
    public long SetAside { get; init; }

    /// <summary>Assessments that a newer one overtook, where only the newest counts; not a loss.</summary>
    public long Superseded { get; init; }

    /// <summary>True while the last attempt failed.</summary>
    public bool IsFailing => FailuresInARow > 0;
}
