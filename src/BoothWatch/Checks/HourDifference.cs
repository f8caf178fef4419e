namespace BoothWatch.Checks;

/// <summary>How far apart two sensors of one quantity were in one hour, on average.</summary>
/// <param name="Hour">Begin of the hour, UTC.</param>
/// <param name="Mean">First less second, in the unit of the quantity.</param>
public readonly record struct HourDifference(DateTimeOffset Hour, double Mean);
