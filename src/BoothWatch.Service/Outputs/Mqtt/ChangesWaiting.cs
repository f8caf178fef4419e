namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Verdict changes of the journal that no broker has taken yet.</summary>
/// <param name="Count">How many.</param>
/// <param name="Oldest">Time of the oldest, UTC; null when there is none.</param>
public sealed record ChangesWaiting(int Count, DateTime? Oldest);
