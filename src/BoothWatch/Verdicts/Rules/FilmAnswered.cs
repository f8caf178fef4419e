namespace BoothWatch.Verdicts.Rules;

/// <summary>Without a usable answer of the film model nobody knows whether this coat blushes: wait.</summary>
public sealed class FilmAnswered : IRule
{
    /// <inheritdoc />
    public string Name => "no-film-answer";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Film is { } film && IsUsable(film))
        {
            yield break;
        }

        string cause = evidence.NoFilmCause ?? "a figure of the film model is not a number";
        yield return new Reason(
            Name, Verdict.Wait, $"blush margin unknown ({cause})", "wait until it is known", RuleOrder.NoFilmAnswer);
    }

    /// <summary>True when every figure that a rule compares is a number.</summary>
    internal static bool IsUsable(FilmFindings film) =>
        double.IsFinite(film.BlushMarginC)
        && double.IsFinite(film.MarginUncertaintyC)
        && double.IsFinite(film.RetarderPct)
        && double.IsFinite(film.MarginAtHighestRetarderC)
        && film.LoadedRetarderPct is null or >= 0
        && film.RecommendedRetarderPct is null or >= 0
        && film.MarginUncertaintyC >= 0;
}
