namespace BoothWatch.Service.Outputs.Pump;

/// <summary>How one output's pump queues, retries and stops. Set in code where the output is registered.</summary>
public sealed class OutputPumpOptions
{
    /// <summary>Assessments that may wait. Default 600 (ten minutes at one a second), at least 1. When full, the oldest is dropped and counted.</summary>
    public int Capacity { get; set; } = 600;

    /// <summary>
    /// True where only the newest assessment counts, as for a live state: one that a newer overtakes is counted as superseded and not as
    /// dropped. Default false.
    /// </summary>
    public bool NewestOnly { get; set; }

    /// <summary>Attempts for one assessment before it is given up and counted as dropped, so that one that can never be handled does not block the rest. Default 8, at least 1.</summary>
    public int MaxAttempts { get; set; } = 8;

    /// <summary>Wait after the first failure. Default 0.5 s; doubles with each further failure.</summary>
    public TimeSpan FirstRetry { get; set; } = TimeSpan.FromSeconds(0.5);

    /// <summary>Longest wait between attempts. Default 60 s.</summary>
    public TimeSpan LongestRetry { get; set; } = TimeSpan.FromSeconds(60);

    /// <summary>Longest time for one attempt before its token is cancelled. Default 30 s.</summary>
    public TimeSpan AttemptLimit { get; set; } = TimeSpan.FromSeconds(30);

    /// <summary>Longest time for the last flush when the service stops. Default 5 s; what is then still waiting is counted as dropped.</summary>
    public TimeSpan FlushLimit { get; set; } = TimeSpan.FromSeconds(5);
}
