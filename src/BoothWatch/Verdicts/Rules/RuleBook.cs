using System.Collections.Immutable;

namespace BoothWatch.Verdicts.Rules;

/// <summary>All rules, and how their reasons make a verdict.</summary>
public static class RuleBook
{
    /// <summary>Every rule. A new rule is a new file in this folder and a line here.</summary>
    public static ImmutableArray<IRule> All { get; } =
    [
        new PartsProved(),
        new ExhaustProven(),
        new BoothAirKnown(),
        new PieceKnown(),
        new PieceNearDewPoint(),
        new BlushMargin(),
        new FilmSets(),
        new FilmAnswered(),
        new AirTooHot(),
        new AirTooCold(),
        new ClockProven(),
        new PieceAgainstAir(),
        new SolventTrapping(),
        new MuchRetarder(),
        new AirTooDry(),
        new FilterLoaded(),
        new PressureKnown(),
        new SpareRetarder(),
    ];

    /// <summary>
    /// The reasons of all rules, most limiting first, then by severity, then by name; the verdict is the limit of the first.
    /// Never empty. Reasons that would allow spray are left out while others forbid it.
    /// </summary>
    public static ImmutableArray<Reason> Decide(Evidence evidence) => Decide(evidence, All);

    /// <summary>The same for a choice of rules, in any order.</summary>
    public static ImmutableArray<Reason> Decide(Evidence evidence, IEnumerable<IRule> rules)
    {
        Reason[] reasons = [.. rules.SelectMany(rule => rule.Judge(evidence))];
        if (reasons.Length == 0)
        {
            // No rule had a word for it, not even a good one: not knowing is never spray.
            return [new Reason("no-rule", Verdict.Wait, "no rule could judge this air", "wait")];
        }

        Verdict worst = reasons.Min(reason => reason.Limit);
        return
        [
            .. reasons
                .Where(reason => worst == Verdict.Spray || reason.Limit < Verdict.Spray)
                .OrderBy(reason => reason.Limit)
                .ThenByDescending(reason => reason.Severity)
                .ThenBy(reason => reason.Rule, StringComparer.Ordinal)
                .ThenBy(reason => reason.Finding, StringComparer.Ordinal),
        ];
    }
}
