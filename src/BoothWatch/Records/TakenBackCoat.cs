using BoothWatch.Jobs;

namespace BoothWatch.Records;

/// <summary>A coat that was marked and taken back: it does not count, and is not hidden.</summary>
/// <param name="Id">Number of the coat.</param>
/// <param name="MarkedAt">When it was marked, UTC.</param>
/// <param name="Details">As marked.</param>
public sealed record TakenBackCoat(long Id, DateTimeOffset MarkedAt, CoatDetails Details);
