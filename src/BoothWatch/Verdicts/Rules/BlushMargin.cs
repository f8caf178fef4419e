namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// The heart of the verdict. Below zero the mix in the cup blushes: wait. Below the margin that policy wants on top of the
/// expanded uncertainty: slow down. Else spray. Where nothing is mixed yet, the level that serves is taken as mixed,
/// and if none serves: wait.
/// </summary>
public sealed class BlushMargin : IRule
{
    /// <summary>Below this gain nobody would add retarder, °C: the last digit that is shown, twice.</summary>
    private const double WorthAddingC = 0.2;

    /// <inheritdoc />
    public string Name => "blush-margin";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence is not { Film: { } film, Air: { } air } || !FilmAnswered.IsUsable(film))
        {
            yield break;
        }

        double wantedC = evidence.Policy.RequiredMarginC + (evidence.Policy.CoverageFactor * film.MarginUncertaintyC);
        string dewPoint = $"dew point {evidence.Text.Of(air.DewPointC)}";
        yield return film.LoadedRetarderPct is null
            ? BeforeMixing(film, wantedC, dewPoint, evidence.Text)
            : WithCupMixed(film, wantedC, dewPoint, evidence.Text);
    }

    private Reason BeforeMixing(FilmFindings film, double wantedC, string dewPoint, TemperatureText text)
    {
        if (film.RecommendedRetarderPct is not double level || !(film.BlushMarginC >= wantedC))
        {
            return Reason(Verdict.Wait, $"{dewPoint}, {NoLevelHolds(film, wantedC, text)}", Instead(film), Order(film));
        }

        string mix = level > 0 ? $"{RetarderDose.Add(film)} and spray" : "spray, no retarder needed";
        return Reason(Verdict.Spray, Under(film, wantedC, dewPoint, text, level > 0 ? "that mix" : "this mix"), mix);
    }

    private Reason WithCupMixed(FilmFindings film, double wantedC, string dewPoint, TemperatureText text)
    {
        double loaded = film.LoadedRetarderPct ?? film.RetarderPct;
        string? add = film.RetarderToAddMl > 0 ? RetarderDose.Add(film) : null;
        if (!(film.BlushMarginC >= 0))
        {
            return Reason(
                Verdict.Wait,
                $"{dewPoint}, {text.By(film.BlushMarginC)} over what this mix holds",
                add is not null ? $"{add} or wait" : $"{Instead(film)}, {NoLevelHolds(film, wantedC, text)}",
                Order(film));
        }

        if (!(film.BlushMarginC >= wantedC))
        {
            return Reason(
                Verdict.SlowDown,
                Under(film, wantedC, dewPoint, text, "this mix"),
                add is not null
                    ? $"{add}, or lay thin coats and watch the film"
                    : $"{MoreRetarder(film, text)}, lay thin coats and watch the film, or wait for drier air");
        }

        return Reason(
            Verdict.Spray,
            Under(film, wantedC, dewPoint, text, "this mix"),
            loaded > 0 ? $"spray, the {RetarderText.Level(loaded)} retarder in the cup is enough" : "spray, no retarder needed");
    }

    // Three cases for the highest level of the ladder: it blushes too, it holds with less than is wanted, or nothing more is known of it.
    private static string NoLevelHolds(FilmFindings film, double wantedC, TemperatureText text)
    {
        string air = film.HoldsWithWarmPiece is true ? "this air on so cold a piece" : "this air";
        double highestC = film.MarginAtHighestRetarderC;
        return highestC < 0 ? $"no retarder level holds {air}, even the highest is {text.By(highestC)} over"
            : highestC < wantedC ? $"no retarder level holds {air} safely, even the highest leaves {text.By(highestC)} of the {text.By(wantedC)} wanted"
            : $"no retarder level holds {air}";
    }

    private static string Instead(FilmFindings film) => film.HoldsWithWarmPiece is true ? "wait, and warm the piece first" : "wait for drier air";

    private static string MoreRetarder(FilmFindings film, TemperatureText text) => film.MarginAtHighestRetarderC - film.BlushMarginC >= WorthAddingC
        ? $"no retarder level gives the full margin, the highest would make it {text.By(film.MarginAtHighestRetarderC)}"
        : "more retarder would not help";

    private static string Under(FilmFindings film, double wantedC, string dewPoint, TemperatureText text, string mix) =>
        $"{dewPoint}, {text.By(film.BlushMarginC)} under what {mix} holds, {text.By(wantedC)} wanted";

    // A piece near the dew point speaks first only where warming it would be enough: the first action must be true on its own.
    private static double Order(FilmFindings film) =>
        film.HoldsWithWarmPiece is false ? RuleOrder.BlushMarginThatWarmingDoesNotCure : RuleOrder.BlushMargin;

    private Reason Reason(Verdict limit, string finding, string action, double order = RuleOrder.BlushMargin) =>
        new(Name, limit, finding, action, order);
}
