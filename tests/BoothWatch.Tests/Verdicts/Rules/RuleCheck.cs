using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts.Rules;

/// <summary>Asks one rule and checks what every reason owes the finisher.</summary>
internal static class RuleCheck
{
    /// <summary>The one reason of the rule, or null when it is content.</summary>
    public static Reason? Of(IRule rule, Evidence evidence)
    {
        Reason? reason = rule.Judge(evidence).SingleOrDefault();
        if (reason is not null)
        {
            Assert.Equal(rule.Name, reason.Rule);
            Assert.False(string.IsNullOrWhiteSpace(reason.Finding));
            Assert.False(string.IsNullOrWhiteSpace(reason.Action));
            Assert.DoesNotContain("NaN", reason.ToString(), StringComparison.Ordinal);
        }

        return reason;
    }

    /// <summary>What the rule still allows; spray when it is content.</summary>
    public static Verdict Limit(IRule rule, Evidence evidence) => Of(rule, evidence)?.Limit ?? Verdict.Spray;
}
