namespace BoothWatch.Service.Reviews;

/// <summary>A figure of a review as the page shows it, in the shop's unit.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Value">The figure with its unit.</param>
/// <param name="Note">What stands beside it; may be empty.</param>
public sealed record ReviewLine(string Label, string Value, string Note);
