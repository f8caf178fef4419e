namespace BoothWatch.Alerts;

/// <summary>A stretch of trouble of one key, from its begin until it is over. It is told once.</summary>
/// <param name="Key">What it is about.</param>
/// <param name="Kind">Kind of the alert.</param>
/// <param name="Level">How much it presses; a higher level is an episode of its own that takes this one's place.</param>
/// <param name="Began">When it began, UTC.</param>
/// <param name="Title">The message in a few words, as last seen.</param>
/// <param name="Finding">What was last found.</param>
/// <param name="Action">What to do.</param>
public sealed record Episode(string Key, AlertKind Kind, AlertLevel Level, DateTimeOffset Began, string Title, string Finding, string Action)
{
    /// <summary>True once it was told; false while quiet hours hold it back.</summary>
    public bool IsTold { get; init; }

    /// <summary>Since when all is well again, monotonic; null while it is not.</summary>
    public TimeSpan? WellSince { get; init; }

    /// <summary>How many episodes of the same key came before it, each within <see cref="EpisodeBook.Recurring"/> of the last.</summary>
    public int Recurrence { get; init; }
}
