namespace BoothWatch.Service.Outputs.Influx;

/// <summary>How far a feed has been shipped.</summary>
/// <param name="Waiting">Rows that still wait.</param>
/// <param name="Oldest">Time of the oldest of them, UTC; null when none waits.</param>
/// <param name="Missed">Rows that were gone before their turn, ever.</param>
/// <param name="SetAside">Rows that the server refused, kept with the reason.</param>
public sealed record FeedState(long Waiting, DateTimeOffset? Oldest, long Missed, long SetAside);
