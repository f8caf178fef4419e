namespace BoothWatch.Service.Jobs;

/// <summary>A correction in JSON.</summary>
/// <param name="Entry">Number of the entry, to undo it.</param>
/// <param name="At">When it was entered, UTC.</param>
/// <param name="Why">The reason.</param>
public sealed record CorrectionLine(long Entry, DateTimeOffset At, string Why);
