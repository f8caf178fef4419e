namespace BoothWatch.Verdicts.Rules;

/// <summary>More retarder than the air asks for only makes the coat dry slower: a remark, not a limit.</summary>
public sealed class SpareRetarder : IRule
{
    /// <summary>Name of the rule.</summary>
    public const string RuleName = "spare-retarder";

    /// <inheritdoc />
    public string Name => RuleName;

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Film is { LoadedRetarderPct: double loaded, RecommendedRetarderPct: double recommended }
            && loaded - recommended >= evidence.Policy.SpareRetarderPct)
        {
            yield return new Reason(
                Name,
                Verdict.Spray,
                $"the cup has {RetarderText.Level(loaded)} retarder, this air needs {(recommended > 0 ? RetarderText.Level(recommended) : "none")}",
                "fine, it only dries slower, leave longer between coats",
                RuleOrder.SpareRetarder);
        }
    }
}
