using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Alerts;

/// <summary>
/// A stretch of spraying. It goes on while a coat is marked as being sprayed, or the verdict is spray and the exhaust is proven to run,
/// and for <see cref="AlertLimits.SessionFor"/> after the last of these.
/// </summary>
/// <param name="LastSpraying">The last moment of spraying, monotonic; null when there was none.</param>
/// <param name="IsActive">True while the session goes on.</param>
/// <param name="Best">The best verdict that the session had; null long after it.</param>
public sealed record SprayingSession(TimeSpan? LastSpraying, bool IsActive, Verdict? Best)
{
    /// <summary>No session.</summary>
    public static SprayingSession None { get; } = new(null, false, null);

    // So long after the session it is no news any more that the verdict has come back.
    internal static readonly TimeSpan Forgotten = TimeSpan.FromHours(4);

    // A coat that nobody stopped does not make a session of the whole night.
    private static readonly TimeSpan LongestCoat = TimeSpan.FromHours(4);

    /// <summary>The session a moment later.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="limits">The limits.</param>
    /// <param name="isTold">True while an episode of its verdict is open: the best verdict then stays what it was.</param>
    public SprayingSession Next(AlertMoment moment, AlertLimits limits, bool isTold)
    {
        ArgumentNullException.ThrowIfNull(moment);
        ArgumentNullException.ThrowIfNull(limits);
        TimeSpan? last = Latest(LastSpraying, LastOf(moment));
        if (last is not { } at || moment.Now - at > limits.SessionFor + Forgotten)
        {
            return new SprayingSession(last, false, null);
        }

        bool active = moment.Now - at <= limits.SessionFor;
        Verdict verdict = moment.Assessment.Verdict;
        Verdict? best = (active, IsActive, isTold, Best) switch
        {
            (false, _, _, _) => Best,

            // After a restart nobody knows what it was before the episode; it may not be taken for what the episode made of it.
            (true, _, true, null) => null,
            (true, false, false, _) or (true, _, _, null) => verdict,
            (true, _, _, { } before) => verdict > before ? verdict : before,
        };
        return new SprayingSession(last, active, best);
    }

    private static TimeSpan? LastOf(AlertMoment moment)
    {
        bool fit = moment.Assessment.Verdict == Verdict.Spray
            && moment.Assessment.Snapshot[Quantity.ExhaustProof] is { IsGood: true, Value: >= 0.5 };
        TimeSpan? last = fit ? moment.Now : null;
        foreach (WatchedJob watched in moment.Jobs ?? [])
        {
            DateTimeOffset? sprayed = watched.Job.LastCoat?.Details switch
            {
                { Stop: null } open when moment.Time - open.Start <= LongestCoat => moment.Time,
                { Stop: { } stop } => stop,
                _ => null,
            };
            last = sprayed <= moment.Time ? Latest(last, moment.Now - (moment.Time - sprayed)) : last;
        }

        return last;
    }

    private static TimeSpan? Latest(TimeSpan? one, TimeSpan? other) => one is null || other > one ? other ?? one : one;
}
