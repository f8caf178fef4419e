namespace BoothWatch.Service.Setup;

/// <summary>What a look at the buses found.</summary>
/// <param name="Buses">The buses that were looked at, for people.</param>
/// <param name="Lines">What is there, or should be.</param>
/// <param name="Silent">How many places were asked and silent.</param>
/// <param name="Troubles">Buses that could not be looked at, and why.</param>
public sealed record ScanAnswer(IReadOnlyList<string> Buses, IReadOnlyList<ScanLine> Lines, int Silent, IReadOnlyList<string> Troubles);
