namespace BoothWatch.Jobs;

/// <summary>One thing that lengthens drying.</summary>
/// <param name="What">What it is, for example <c>air of 12.0 °C</c>.</param>
/// <param name="Factor">How many times longer it alone makes the time to set, above 1; null when the film does not set because of it.</param>
public sealed record DelayCause(string What, double? Factor);
