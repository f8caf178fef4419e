namespace BoothWatch.Reviews;

/// <summary>One thing done otherwise, all else as it was, and whether the coat would have held: with the whole margin that the shop wants.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="Holds">Whether it would have held.</param>
/// <param name="Value">The retarder level (%), wet film (µm) or piece temperature (°C) that holds; null where none does, and for times.</param>
/// <param name="EdgeValue">The same for a margin of just zero, where the model begins to expect no blush; null where not even that is reached, and for times.</param>
/// <param name="At">The time that holds, UTC; null for the others, or where none does.</param>
/// <param name="Briefly">What holds, in a few words; empty where nothing does.</param>
/// <param name="Words">In full.</param>
public sealed record ReviewRemedy(ReviewRemedyKind Kind, bool Holds, double? Value, double? EdgeValue, DateTimeOffset? At, string Briefly, string Words);
