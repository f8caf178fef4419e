using BoothWatch.Verdicts;

namespace BoothWatch.Alerts.Rules;

/// <summary>
/// The verdict is worse than the best one of the session. From slow down to wait is an episode of its own. A verdict that got worse
/// because a sensor was lost is told by <see cref="SensorsLost"/>, and the dwell after it is not told at all.
/// </summary>
public sealed class VerdictWorse : IAlertRule
{
    /// <summary>Key of its one episode.</summary>
    public const string Key = "verdict";

    private static readonly string[] NeedSensors = ["booth-air-unknown", "piece-unknown", "exhaust-not-proven", "no-film-answer", "filter-loaded", "pressure-assumed"];

    /// <inheritdoc/>
    public IEnumerable<AlertSign> Look(AlertState state, AlertMoment moment, AlertLimits limits)
    {
        if (state.Session.Best is not { } best)
        {
            return [];
        }

        Verdict verdict = moment.Assessment.Verdict;
        Reason reason = moment.Assessment.Reasons[0];
        bool elsewhere = reason.Rule == "dwell" || (NeedSensors.Contains(reason.Rule) && SensorsLost.Lost(state, moment, limits).Any());
        SignState seen = verdict >= best ? SignState.Off
            : state.Session.IsActive && !elsewhere ? SignState.On
            : SignState.Holding;
        AlertLevel level = verdict == Verdict.Wait ? AlertLevel.Urgent : AlertLevel.Warning;
        string word = verdict.Word();
        string title = char.ToUpperInvariant(word[0]) + word[1..] + (seen == SignState.Off ? " again" : "");
        return [new AlertSign(Key, AlertKind.VerdictWorse, level, seen, title, reason.Finding, reason.Action)];
    }
}
