namespace BoothWatch.Verdicts.Rules;

/// <summary>More retarder than the air asks for only makes the coat dry slower: a remark, not a limit.</summary>
public sealed class SpareRetarder : IRule
{
    /// <inheritdoc />
    public string Name => "spare-retarder";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Film is { LoadedRetarderPct: double loaded, RecommendedRetarderPct: double recommended }
            && loaded - recommended >= evidence.Policy.SpareRetarderPct)
        {
            yield return new Reason(
                Name,
                Verdict.Spray,
                $"{RetarderText.Level(loaded)} retarder in the cup, {RetarderText.Level(recommended)} would do",
                "it only dries slower, leave longer between coats",
                RuleOrder.SpareRetarder);
        }
    }
}
