namespace BoothWatch.Records;

/// <summary>A check of a sensor against a reference.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="Finding">What it showed, in words with number and unit.</param>
public sealed record SensorCheck(DateTimeOffset At, string Finding);
