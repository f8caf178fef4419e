namespace BoothWatch.Service.Outputs;

/// <summary>What waits for an output that takes its work from elsewhere than its queue.</summary>
/// <param name="Waiting">How many wait.</param>
/// <param name="Oldest">Time of the oldest of them, UTC; null when none waits.</param>
public sealed record OutputBacklog(int Waiting, DateTimeOffset? Oldest);
