namespace BoothWatch.Verdicts.Rules;

/// <summary>A mix with much retarder stays wet long: it runs, gathers dust and needs longer between coats. Common practice, no source.</summary>
public sealed class MuchRetarder : IRule
{
    /// <inheritdoc />
    public string Name => "much-retarder";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        double limitPct = evidence.Policy.SlowDownAboveRetarderPct;
        if (evidence.Film is { } film && (film.LoadedRetarderPct ?? film.RecommendedRetarderPct) is double levelPct && levelPct > limitPct)
        {
            string finding = film.LoadedRetarderPct is null
                ? $"this air asks for {RetarderText.LevelForCup(levelPct, film)}, over {RetarderText.Level(limitPct)}"
                : $"{RetarderText.Level(levelPct)} retarder in the cup, over {RetarderText.Level(limitPct)}";
            yield return new Reason(
                Name,
                Verdict.SlowDown,
                finding,
                "lay thin coats flat, expect runs and slow drying, leave longer between coats",
                RuleOrder.MuchRetarder);
        }
    }
}
