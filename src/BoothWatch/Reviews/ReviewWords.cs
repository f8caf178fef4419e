using System.Globalization;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Reviews;

/// <summary>Puts a review into the words of the shop.</summary>
internal sealed class ReviewWords(ReviewCase coat)
{
    /// <summary>A second cause is named beside the first from this share of its cost on. Own choice.</summary>
    private const double WorthNaming = 0.25;

    /// <summary>A time to set that differs from the usual by less than this share is as usual. Own choice.</summary>
    private const double AsUsual = 0.15;

    private readonly TemperatureText _text = new(coat.Policy.TemperatureUnit);

    /// <summary>The air was not recorded when the coat landed.</summary>
    public string NoAir() =>
        $"Not known: no booth air was recorded at {Clock(coat.Landing)}, when this coat landed. Missing are temperature, humidity and dew point; without them nobody can say why it came out as it did.";

    /// <summary>The piece was not measured.</summary>
    public string NoPiece() =>
        $"Not known: the temperature of the piece was not recorded at {Clock(coat.Landing)}. A piece a few degrees colder than the air decides over blush, so there is no answer without it.";

    /// <summary>The model has no answer.</summary>
    public string NoModel(DryingFailedException failed) => $"Not known: the film model has no answer for this coat: {_text.Of(failed)}.";

    /// <summary>The record ends while the film is open.</summary>
    public string NotLongEnough(DateTimeOffset knownUntil) =>
        $"Not known yet: the air of this coat is recorded until {Clock(knownUntil)} without a gap, and its film was still open then. If it is still drying, look again when it has set.";

    /// <summary>The answer.</summary>
    public string Headline(ReviewFinding finding, ReviewFigures figures, IReadOnlyList<ReviewCause> causes, IReadOnlyList<ReviewRemedy> remedies, DryingDelay? delay)
    {
        string blush = (coat.Outcome, finding) switch
        {
            (CoatOutcome.Blushed, ReviewFinding.Blushes) => $"The air explains this blush. {Cause(causes)} {Held(remedies)}",
            (CoatOutcome.Blushed, ReviewFinding.MayBlush) => $"The air may explain this blush: the coat was at its limit ({Margin(figures)}). {Cause(causes)} {Held(remedies)}",
            (CoatOutcome.Blushed, _) => $"The air does not explain this blush: the coat had room to spare ({Margin(figures)}) and the model's film set dry. Look elsewhere, below.",
            (CoatOutcome.Clear, ReviewFinding.Blushes) => $"It came out clear, though the model expected blush ({Margin(figures)}). Retarder, film or piece may have been other than marked; or the model is too careful here. {Cause(causes)}",
            (CoatOutcome.Clear, ReviewFinding.MayBlush) => $"It came out clear, but close to its limit ({Margin(figures)}).",
            (CoatOutcome.Clear, _) => $"It came out clear, as the model expects ({Margin(figures)}).",
            (null, ReviewFinding.Blushes) => $"Nobody has said how it came out. The model expects blush ({Margin(figures)}). {Cause(causes)}",
            (null, ReviewFinding.MayBlush) => $"Nobody has said how it came out. By the model it was at its limit ({Margin(figures)}).",
            (null, _) => $"Nobody has said how it came out. The model expects no blush ({Margin(figures)}).",
            (_, ReviewFinding.Blushes) => $"Blush beside it would be no surprise ({Margin(figures)}).",
            _ => "",
        };
        string other = coat.Outcome switch
        {
            CoatOutcome.Runs => $"The model says nothing on runs: it knows no flow. All it can tell is that the film stayed open for {Open(figures)}.",
            CoatOutcome.DrySpray => Dry(figures, "which leaves droplets less time to wet out", "so the air did not dry the spray"),
            CoatOutcome.OrangePeel => Dry(figures, "which leaves the film less time to level", "so the air did not cut its levelling short"),
            CoatOutcome.Soft => SoftWords(figures, delay),
            _ => "",
        };
        return string.Join(" ", new[] { other, blush }.Where(part => part.Length > 0));
    }

    /// <summary>What happened, in sentences.</summary>
    public IReadOnlyList<string> Story(ReviewFigures figures, IReadOnlyList<ReviewAirPoint> air)
    {
        List<string> story = [];
        story.Add(figures.BelowDewPointAfterS is { } afterS
            ? $"Drying chilled the wet film to {_text.Of(figures.LowestFilmTemperatureC)}. {Below(afterS)} it lay below the dew point, for {ReviewTime.Words(figures.BelowDewPointForS)} in all and by {_text.By(figures.BelowDewPointByC)} at most, and drew water."
            : $"Drying chilled the wet film to {_text.Of(figures.LowestFilmTemperatureC)}, never down to the dew point. It drew no water.");
        string water = Text($"{figures.WaterAtSetGPerM2:0.00} g/m² of water");
        string tolerance = Text($"{figures.ToleranceGPerM2:0.00} g/m²");
        story.Add(figures.TimeToSetS is { } setS
            ? $"It set {ReviewTime.Words(setS)} after it landed, at {Clock(coat.Landing.AddSeconds(setS))}, with {water} in it; a film shows haze from about {tolerance}."
            : $"It does not set within {Open(figures)} in the model, and holds {water} then; a film shows haze from about {tolerance}.");
        if (figures.MarginNegativeSince is { } since)
        {
            bool fromStart = air.Count > 0 && since == air[0].Time;
            string when = fromStart ? $"since {Clock(since)} or before, as far back as this looks" : $"from {Clock(since)} on";
            story.Add($"A coat like this one had no margin {when}; while it was open, the dew point was up to {_text.By(figures.LeastMomentMarginC)} over its limit.");
        }
        else
        {
            story.Add($"A coat like this one had margin all the while it was open, {_text.By(figures.LeastMomentMarginC)} at the least.");
        }

        if (figures.SolventTrappingRisk)
        {
            story.Add("It skinned over while much solvent was still below: that solvent comes out late, and can leave the film soft or pinholed.");
        }

        return story;
    }

    private static string Below(double afterS) => afterS < 1 ? "From the moment it landed" : $"{ReviewTime.Words(afterS)} after it landed";

    private static string Cause(IReadOnlyList<ReviewCause> causes)
    {
        string first = $"Likeliest cause: {causes[0].Words}.";
        return causes.Count > 1 && causes[1].CostC >= WorthNaming * causes[0].CostC ? $"{first} Next: {causes[1].Words}." : first;
    }

    // The two that a finisher would take first; the page lists them all.
    private static string Held(IReadOnlyList<ReviewRemedy> remedies)
    {
        string[] held = [.. remedies.Where(remedy => remedy.Holds).Take(2).Select(remedy => remedy.Briefly)];
        return held.Length == 0 ? "Nothing tried alone would have held." : $"What would have held: {string.Join(", or ", held)}.";
    }

    private string Dry(ReviewFigures figures, string fast, string notFast)
    {
        if (figures is not { TimeToSetS: { } setS, ReferenceTimeToSetS: > 0 and { } usualS })
        {
            return "The model cannot compare how fast it dried.";
        }

        double share = setS / usualS;
        string set = $"The film set in {ReviewTime.Words(setS)}; a usual coat in air of {_text.Of(DryingDelay.ReferenceTemperatureC)} takes {ReviewTime.Words(usualS)}";
        return share < 1 - AsUsual ? $"It dried fast: {Lower(set)}, {fast}." : $"The air does not explain it. {set}, {notFast}.";
    }

    private static string SoftWords(ReviewFigures figures, DryingDelay? delay) => delay?.Words() is { Length: > 0 } why
        ? $"It dried slowly: {why}. The model follows a film until it sets, not until it is hard."
        : $"Nothing in its air slows it: the film set in {Open(figures)}. The model follows a film until it sets, not until it is hard.";

    private static string Open(ReviewFigures figures) => ReviewTime.Words(figures.TimeToSetS ?? FilmParameters.Default.LongestRunS);

    private string Margin(ReviewFigures figures) => $"blush margin {Signed(figures.MarginC)} ± {_text.By(figures.MarginUncertaintyC)}";

    private string Signed(double differenceC) => (differenceC < 0 ? "-" : "+") + _text.By(differenceC);

    private string Clock(DateTimeOffset time) => ReviewTime.OfDay(time, coat.Zone);

    private static string Lower(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
