namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>One reason of a verdict change.</summary>
/// <param name="Rule">The rule that spoke.</param>
/// <param name="Limit">The best verdict that it allowed, in words.</param>
/// <param name="Finding">What was found.</param>
/// <param name="Action">What to do.</param>
public sealed record VerdictChangeReason(string Rule, string Limit, string Finding, string Action);
