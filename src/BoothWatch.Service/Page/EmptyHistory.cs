namespace BoothWatch.Service.Page;

/// <summary>The past of a booth that keeps no journal.</summary>
public sealed class EmptyHistory : IHistory
{
    /// <inheritdoc/>
    public IReadOnlyList<HistoryPoint> Read(DateTimeOffset from, DateTimeOffset until, int points) => [];
}
