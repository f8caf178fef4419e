namespace BoothWatch.Verdicts;

/// <summary>Why the verdict is what it is, with the number and the action.</summary>
/// <param name="Rule">Stable name of the rule that speaks, kebab-case, for example <c>blush-margin</c>.</param>
/// <param name="Limit">The best verdict that this reason still allows.</param>
/// <param name="Finding">What was found, with its number and unit, for example <c>dew point 17.8 °C, 0.6 °C over what this mix holds</c>.</param>
/// <param name="Action">What to do, for example <c>raise retarder to 9 % or wait</c>.</param>
/// <param name="Severity">Orders reasons of the same limit; higher first.</param>
public sealed record Reason(string Rule, Verdict Limit, string Finding, string Action, double Severity = 0)
{
    /// <summary>The finding and the action in one line.</summary>
    public override string ToString() => $"{Finding}: {Action}";
}
