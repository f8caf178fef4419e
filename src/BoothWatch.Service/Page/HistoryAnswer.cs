namespace BoothWatch.Service.Page;

/// <summary>The past of the booth.</summary>
/// <param name="From">Begin, UTC.</param>
/// <param name="To">End, UTC.</param>
/// <param name="Points">The points, oldest first. Times without data are absent.</param>
public sealed record HistoryAnswer(DateTime From, DateTime To, IReadOnlyList<HistoryPoint> Points);
