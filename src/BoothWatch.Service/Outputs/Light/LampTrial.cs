namespace BoothWatch.Service.Outputs.Light;

/// <summary>That an output was driven to be looked at, and nothing about what anybody saw.</summary>
/// <param name="Wiring">The pin and its level, in words.</param>
/// <param name="Time">When it began.</param>
/// <param name="Fault">Why the pin could not be driven; null when it could, and read back so.</param>
public sealed record LampTrial(string Wiring, DateTimeOffset Time, string? Fault);
