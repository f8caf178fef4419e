namespace BoothWatch.Checks;

/// <summary>A result with its time.</summary>
/// <param name="At">When it was taken, UTC.</param>
/// <param name="Result">The result.</param>
public sealed record DatedResult(DateTimeOffset At, CheckResult Result);
