namespace BoothWatch.Service.Assessing;

/// <summary>Decides whether the wall clock may be believed.</summary>
/// <param name="time">The clock.</param>
/// <param name="mustBeSynchronised">Whether time service or a battery clock must vouch for it.</param>
/// <param name="isVouchedFor">Whether one does.</param>
public sealed class ClockProof(TimeProvider time, bool mustBeSynchronised, Func<bool> isVouchedFor)
{
    /// <summary>No BoothWatch ran before this day, so an earlier clock is wrong.</summary>
    public static readonly DateTimeOffset EarliestPlausible = new(2026, 11, 1, 0, 0, 0, TimeSpan.Zero);

    private bool _wasVouchedFor;

    /// <summary>
    /// True when the clock may be believed now. Once something has vouched for the clock it stays proven:
    /// losing the network later drifts it by seconds, not by years.
    /// </summary>
    public bool IsProven()
    {
        if (time.GetUtcNow() < EarliestPlausible)
        {
            return false;
        }

        _wasVouchedFor = _wasVouchedFor || !mustBeSynchronised || isVouchedFor();
        return _wasVouchedFor;
    }
}
