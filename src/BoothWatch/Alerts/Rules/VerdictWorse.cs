using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Alerts.Rules;

/// <summary>
/// The verdict is worse than the best one of the session. From slow down to wait is an episode of its own. A verdict that got worse
/// because a sensor was lost is told by <see cref="SensorsLost"/> where that one speaks of the sensor and is heard; the dwell after it is not
/// told at all.
/// </summary>
public sealed class VerdictWorse : IAlertRule
{
    /// <summary>Key of its one episode.</summary>
    public const string Key = "verdict";

    // What each rule of the verdict needs to be measured. The same rules speak of what was measured, too.
    private static readonly Dictionary<string, Quantity[]> Needs = new()
    {
        ["booth-air-unknown"] = [Quantity.BoothTemperature, Quantity.BoothHumidity],
        ["piece-unknown"] = [Quantity.PieceTemperature],
        ["exhaust-not-proven"] = [Quantity.ExhaustProof],
        ["no-film-answer"] = [Quantity.BoothTemperature, Quantity.BoothHumidity, Quantity.PieceTemperature],
        ["filter-loaded"] = [Quantity.FilterPressureDrop],
        ["pressure-assumed"] = [Quantity.StationPressure],
    };

    /// <inheritdoc/>
    public IEnumerable<AlertSign> Look(AlertState state, AlertMoment moment, AlertLimits limits)
    {
        Verdict verdict = moment.Assessment.Verdict;
        Verdict best;
        if (state.Session.Best is { } known)
        {
            best = known;
        }
        else if (state.Open.TryGetValue(Key, out Episode? open) && moment.Time - open.Began < SprayingSession.Forgotten)
        {
            // From before a restart: only spray is surely as good as it was.
            best = Verdict.Spray;
        }
        else
        {
            return [];
        }

        Reason reason = moment.Assessment.Reasons[0];
        Quantity[] silent = [.. Needs.GetValueOrDefault(reason.Rule, []).Where(quantity => moment.Assessment.Snapshot[quantity] is { IsGood: false, Sensor.Length: > 0 })];
        bool elsewhere = reason.Rule == "dwell" || (silent.Length > 0 && silent.All(quantity => SensorsLost.Tells(quantity, state, moment, limits)));
        SignState seen = verdict >= best ? SignState.Off
            : state.Session is { IsActive: true, Best: not null } && !elsewhere ? SignState.On
            : SignState.Holding;
        AlertLevel level = verdict == Verdict.Wait ? AlertLevel.Urgent : AlertLevel.Warning;
        string word = verdict.Word();
        string title = char.ToUpperInvariant(word[0]) + word[1..] + (seen == SignState.Off ? " again" : "");
        return
        [
            new AlertSign(Key, AlertKind.VerdictWorse, level, seen, title, reason.Finding, reason.Action)
            {
                // A single bad answer is no loss here either.
                After = silent.Length > 0 ? AlertLimits.SensorsLostInSession : TimeSpan.Zero,
            },
        ];
    }
}
