using BoothWatch.Verdicts;

namespace BoothWatch.Records;

/// <summary>A coat that was begun although the verdict was not spray, or while there was none.</summary>
/// <param name="Verdict">The verdict at its start; null when none is on record.</param>
/// <param name="Finding">What happened, in words.</param>
/// <param name="Reasons">The reasons that the verdict gave, as the journal has them; empty when it has none.</param>
public sealed record CoatOverride(Verdict? Verdict, string Finding, IReadOnlyList<string> Reasons);
