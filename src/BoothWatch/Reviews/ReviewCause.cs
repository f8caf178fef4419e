namespace BoothWatch.Reviews;

/// <summary>One thing that took a coat towards blush.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="CostC">Blush margin that it alone cost, °C.</param>
/// <param name="Words">In words, with its numbers.</param>
/// <param name="Detail">What is to be added; may be empty.</param>
public sealed record ReviewCause(ReviewCauseKind Kind, double CostC, string Words, string Detail = "");
