namespace BoothWatch.Reviews;

/// <summary>One thing that took a coat towards blush.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="CostC">Blush margin that it alone cost, °C.</param>
/// <param name="Words">In words, with its numbers.</param>
public sealed record ReviewCause(ReviewCauseKind Kind, double CostC, string Words);
