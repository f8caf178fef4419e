namespace BoothWatch.Jobs;

/// <summary>Mean, least and most of one quantity over a span.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="Min">Least.</param>
/// <param name="Max">Most.</param>
public sealed record AirSpan(double Mean, double Min, double Max);
