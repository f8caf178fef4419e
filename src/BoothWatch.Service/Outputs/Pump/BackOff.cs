namespace BoothWatch.Service.Outputs.Pump;

/// <summary>
/// The waits after failures in a row: doubling from a first wait up to a longest one, each shortened at random
/// by up to a half, so that several outputs that failed together do not come back together.
/// Not safe for use by several threads.
/// </summary>
/// <param name="first">Wait after the first failure, before the random part.</param>
/// <param name="longest">Longest wait.</param>
/// <param name="random">Gives numbers from 0 up to 1.</param>
public sealed class BackOff(TimeSpan first, TimeSpan longest, Func<double> random)
{
    private TimeSpan _next = first < longest ? first : longest;

    /// <summary>Failures since the last success.</summary>
    public int FailuresInARow { get; private set; }

    /// <summary>Counts a failure and gives the wait before the next attempt: between half of the full wait and the full wait.</summary>
    public TimeSpan NextWait()
    {
        FailuresInARow++;
        TimeSpan full = _next;
        _next = full < longest / 2 ? full * 2 : longest;
        return full * (0.5 + (0.5 * random()));
    }

    /// <summary>Forgets the failures, after a success.</summary>
    public void Reset()
    {
        FailuresInARow = 0;
        _next = first < longest ? first : longest;
    }
}
