namespace BoothWatch.Service.Outputs.Series;

/// <summary>A reason as the journal keeps it beside a verdict change.</summary>
/// <param name="Rule">Stable name of the rule.</param>
/// <param name="Limit">Best verdict the reason still allows: spray, slow down or wait.</param>
/// <param name="Finding">What was found, with number and unit.</param>
/// <param name="Action">What to do.</param>
public sealed record ChangeReason(string Rule, string Limit, string Finding, string Action);
