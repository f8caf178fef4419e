using BoothWatch.Film;

namespace BoothWatch.Jobs;

/// <summary>One coat of a round and the wait after it.</summary>
/// <param name="Coat">Kind of coat.</param>
/// <param name="Wait">Least wait before what follows, in the reference air.</param>
public sealed record ScheduleStep(CoatKind Coat, TimeSpan Wait);
