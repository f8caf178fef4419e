namespace BoothWatch.Service.Outputs.Series;

/// <summary>The history of a span of time.</summary>
/// <param name="From">Start of the span, UTC, included.</param>
/// <param name="To">End of the span, UTC, not included.</param>
/// <param name="Step">Length of time each point stands for; null when each point is one row as written.</param>
/// <param name="Points">The points by time; stretches without data have none.</param>
public sealed record SeriesHistory(DateTimeOffset From, DateTimeOffset To, TimeSpan? Step, IReadOnlyList<SeriesPoint> Points);
