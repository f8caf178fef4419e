namespace BoothWatch.Warming;

/// <summary>A time until a piece is warm enough, with its range.</summary>
/// <param name="LeftS">The time, s.</param>
/// <param name="LeastS">The least that is likely, s.</param>
/// <param name="MostS">The most that is likely, s; null where no end can be named.</param>
public readonly record struct WarmingTime(double LeftS, double LeastS, double? MostS);
