using BoothWatch.Service.Outputs.Pump;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>The place of one target in the queue: whether something is on its way, and how long to wait after failures.</summary>
internal sealed class AlertLane(TimeProvider time, Func<double> random)
{
    private static readonly TimeSpan FirstRetry = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan LongestRetry = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan LongestWish = TimeSpan.FromMinutes(5);

    private readonly BackOff _backOff = new(FirstRetry, LongestRetry, random);
    private TimeSpan _wait;
    private long _since = time.GetTimestamp();

    /// <summary>True while something is on its way.</summary>
    public bool IsBusy { get; set; }

    /// <summary>Number of the row that was last handed over.</summary>
    public long HandedOver { get; set; }

    /// <summary>Failures since the last success.</summary>
    public int FailuresInARow => _backOff.FailuresInARow;

    /// <summary>What is left of the wait; null when there is none.</summary>
    public TimeSpan? Left => _wait > TimeSpan.Zero ? _wait - time.GetElapsedTime(_since) : null;

    /// <summary>Counts a failure.</summary>
    /// <param name="wish">When the receiver wants to be asked again; at most five minutes of it are granted.</param>
    /// <returns>The wait.</returns>
    public TimeSpan Failed(TimeSpan? wish)
    {
        TimeSpan wait = _backOff.NextWait();
        TimeSpan granted = wish is { } asked && asked > wait ? (asked < LongestWish ? asked : LongestWish) : wait;
        (_wait, _since) = (granted, time.GetTimestamp());
        return granted;
    }

    /// <summary>Forgets the failures.</summary>
    /// <returns>How many there were.</returns>
    public int Succeeded()
    {
        int failures = _backOff.FailuresInARow;
        _backOff.Reset();
        _wait = TimeSpan.Zero;
        return failures;
    }
}
