namespace BoothWatch.Service.Checks;

/// <summary>A past check.</summary>
/// <param name="Begun">When it was begun, UTC.</param>
/// <param name="IsCancelled">True when its results do not count, or it has none.</param>
/// <param name="Results">What was found.</param>
public sealed record ChecksPast(DateTimeOffset Begun, bool IsCancelled, IReadOnlyList<ChecksResult> Results);
