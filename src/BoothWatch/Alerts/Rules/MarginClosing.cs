using System.Globalization;
using BoothWatch.Verdicts;

namespace BoothWatch.Alerts.Rules;

/// <summary>
/// The margin closes fast: a straight line through its last minutes reaches the next worse verdict soon. Under spray that is the
/// wanted margin, under slow down it is zero. A straight line is no forecast. It speaks in a session only, and gives way to
/// <see cref="VerdictWorse"/>.
/// </summary>
public sealed class MarginClosing : IAlertRule
{
    /// <summary>Key of its one episode.</summary>
    public const string Key = "margin";

    // Less is within what sensor noise does to the line over ten minutes.
    private const double LeastFallCPerMinute = 0.02;
    private static readonly TimeSpan Lasting = TimeSpan.FromSeconds(30);

    /// <inheritdoc/>
    public IEnumerable<AlertSign> Look(AlertState state, AlertMoment moment, AlertLimits limits)
    {
        Assessment assessment = moment.Assessment;
        if (!state.Session.IsActive || assessment.Verdict == Verdict.Wait || state.Open.ContainsKey(VerdictWorse.Key))
        {
            yield break;
        }

        if (assessment.Film is not { } film || state.Margin.LineAt(moment.Now, limits) is not { } line)
        {
            yield return Sign(SignState.Holding, "", "", "");
            yield break;
        }

        VerdictPolicy policy = limits.Policy;
        TemperatureText text = new(policy.TemperatureUnit);
        bool spray = assessment.Verdict == Verdict.Spray;
        double floor = spray ? policy.RequiredMarginC + (policy.CoverageFactor * film.MarginUncertaintyC) : 0;
        double left = line.PerMinuteC < -LeastFallCPerMinute ? Math.Max(0, (line.MarginC - floor) / -line.PerMinuteC) : double.PositiveInfinity;
        double limit = limits.MarginLeft.TotalMinutes;
        string next = spray ? "slow down" : "blush";
        yield return left < limit
            ? Sign(
                SignState.On,
                string.Create(CultureInfo.InvariantCulture, $"Margin closing: about {Math.Floor(left):0} min to {next}"),
                $"blush margin {text.By(Math.Max(0, line.MarginC))}, falling {text.By(-line.PerMinuteC * 10)} in ten minutes",
                "finish the coat that you are on, or raise the retarder before the next cup")
            : Sign(left > 2 * limit ? SignState.Off : SignState.Holding, "Margin holds again", $"blush margin {text.By(Math.Max(0, line.MarginC))}", "");
    }

    private static AlertSign Sign(SignState state, string title, string finding, string action) =>
        new(Key, AlertKind.MarginClosing, AlertLevel.Warning, state, title, finding, action) { After = Lasting };
}
