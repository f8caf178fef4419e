using System.Globalization;

namespace BoothWatch.Verdicts;

/// <summary>
/// Keeps the light calm: a worse verdict shows at once, a better one only after it has held for the dwell without a break.
/// Starts at wait. A gap in the ticks, or time that runs backwards, counts as a break. Not safe for several threads.
/// </summary>
/// <param name="dwell">How long a better verdict must hold.</param>
/// <param name="longestGap">Longest time between two ticks that still counts as holding.</param>
public sealed class VerdictDwell(TimeSpan dwell, TimeSpan longestGap)
{
    private TimeSpan? _lastTick;
    private TimeSpan? _slowDownOrBetterSince;
    private TimeSpan? _spraySince;

    /// <summary>A dwell with the times of <paramref name="policy"/>.</summary>
    public VerdictDwell(VerdictPolicy policy)
        : this(TimeSpan.FromSeconds(policy.DwellS), TimeSpan.FromSeconds(policy.LongestGapS))
    {
    }

    /// <summary>The assessment to show. While a better verdict is held back, its only reason says for how long: advice to spray has no place beside a red lamp.</summary>
    /// <param name="assessment">The assessment of this tick, as the rules decided it.</param>
    /// <param name="now">Monotonic time of this tick, from any fixed start.</param>
    public Assessment Hold(Assessment assessment, TimeSpan now)
    {
        if (_lastTick is { } last && (now < last || now - last > longestGap))
        {
            (_slowDownOrBetterSince, _spraySince) = (null, null);
        }

        _lastTick = now;
        _slowDownOrBetterSince = assessment.Verdict >= Verdict.SlowDown ? _slowDownOrBetterSince ?? now : null;
        _spraySince = assessment.Verdict >= Verdict.Spray ? _spraySince ?? now : null;

        Verdict shown = Held(_spraySince, now) ? Verdict.Spray
            : Held(_slowDownOrBetterSince, now) ? Verdict.SlowDown
            : Verdict.Wait;
        if (shown == assessment.Verdict)
        {
            return assessment;
        }

        Verdict next = shown == Verdict.SlowDown || _slowDownOrBetterSince == _spraySince ? assessment.Verdict : Verdict.SlowDown;
        TimeSpan since = (next == Verdict.Spray ? _spraySince : _slowDownOrBetterSince) ?? now;
        return assessment with { Verdict = shown, Reasons = [Improving(shown, next, since + dwell - now)] };
    }

    private bool Held(TimeSpan? since, TimeSpan now) => since is { } start && now - start >= dwell;

    private static Reason Improving(Verdict shown, Verdict next, TimeSpan left) => new(
        "dwell",
        shown,
        next == Verdict.Spray ? "conditions are good for spray" : "conditions are good enough for slow down",
        string.Create(CultureInfo.InvariantCulture, $"showing it in {Math.Ceiling(left.TotalSeconds):0} s if they hold"));
}
