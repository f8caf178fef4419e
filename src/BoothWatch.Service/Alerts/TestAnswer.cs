namespace BoothWatch.Service.Alerts;

/// <summary>Outcome of a test message.</summary>
/// <param name="Channel">Name of the channel.</param>
/// <param name="Taken">How many receivers took it.</param>
/// <param name="Error">Why the last of the others did not; null when all took it.</param>
public sealed record TestAnswer(string Channel, int Taken, string? Error);
