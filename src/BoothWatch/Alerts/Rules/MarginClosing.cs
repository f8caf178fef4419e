using System.Globalization;
using BoothWatch.Outlook;
using BoothWatch.Verdicts;

namespace BoothWatch.Alerts.Rules;

/// <summary>
/// The margin closes fast: a straight line through its last minutes reaches the next worse verdict soon. Under spray that is the
/// wanted margin, under slow down the one below which a coat blushes. What is within the noise of the points is no fall, and a straight
/// line is no forecast. It speaks in a session only, and gives way to
/// <see cref="VerdictWorse"/>.
/// </summary>
public sealed class MarginClosing : IAlertRule
{
    /// <summary>Key of its one episode.</summary>
    public const string Key = "margin";

    // Less is within what sensor noise does to the line over ten minutes.
    private const double LeastFallCPerMinute = 0.02;

    // Standard errors from the line to the steepest one that the points allow: about 95 % with ten parts.
    private const double Coverage = 2;
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
        double wantedC = policy.RequiredMarginC + (policy.CoverageFactor * film.MarginUncertaintyC);
        (double floorC, string next) = (assessment.Verdict, film.LoadedRetarderPct) switch
        {
            // With nothing mixed no level may hold less than is wanted.
            (_, null) => (wantedC, "a verdict of wait"),
            (Verdict.Spray, _) => (wantedC, "slow down"),
            _ => (policy.BlushesBelowC(), "blush"),
        };
        double marginC = line.At(0);
        double fall = -line.Slope;
        double error = line.AdjustedSlopeError;
        bool falls = fall > LeastFallCPerMinute && fall > ClosingMargin.Significance * error;
        double left = falls ? Math.Max(0, (marginC - floorC) / fall) : double.PositiveInfinity;
        double limit = limits.MarginLeft.TotalMinutes;
        if (left < limit)
        {
            yield return Sign(
                SignState.On,
                string.Create(CultureInfo.InvariantCulture, $"Margin closing: about {Math.Floor(left):0} min to {next}"),
                $"blush margin {text.By(Math.Max(0, marginC))}, falling {text.By(fall * 10)} in ten minutes",
                "finish the coat that you are on, or raise the retarder before the next cup");
            yield break;
        }

        // It holds when even the steepest line that the points allow leaves enough.
        double steepest = fall + (Coverage * error);
        bool holds = steepest <= LeastFallCPerMinute || (marginC - floorC) / steepest > 2 * limit;
        yield return Sign(holds ? SignState.Off : SignState.Holding, "Margin holds again", $"blush margin {text.By(Math.Max(0, marginC))}", "");
    }

    private static AlertSign Sign(SignState state, string title, string finding, string action) =>
        new(Key, AlertKind.MarginClosing, AlertLevel.Warning, state, title, finding, action) { After = Lasting };
}
