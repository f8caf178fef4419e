using BoothWatch.Alerts.Rules;

namespace BoothWatch.Alerts;

/// <summary>One look at the booth: which episode begins, goes on or ends, and what is to be told.</summary>
public static class AlertRules
{
    private static readonly IAlertRule[] All = [new VerdictWorse(), new MarginClosing(), new SensorsLost(), new TimersDue(), new SoftFilm(), new PieceWarm()];

    /// <summary>Takes one step.</summary>
    /// <param name="before">The state after the step before.</param>
    /// <param name="moment">The present moment.</param>
    /// <param name="limits">The limits.</param>
    public static AlertStep Step(AlertState before, AlertMoment moment, AlertLimits limits)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(moment);
        ArgumentNullException.ThrowIfNull(limits);
        AlertState state = before.See(moment, limits);
        return EpisodeBook.Enter(state, [.. All.SelectMany(rule => rule.Look(state, moment, limits))], moment, limits);
    }
}
