namespace BoothWatch.Records;

/// <summary>The air over a span of time, in equal steps.</summary>
/// <param name="From">Start, UTC.</param>
/// <param name="To">End, UTC, not included.</param>
/// <param name="StepS">Length of a step, s.</param>
/// <param name="Points">Oldest first; a step without a recorded minute has none.</param>
public sealed record AirStretch(DateTimeOffset From, DateTimeOffset To, int StepS, IReadOnlyList<AirPoint> Points);
