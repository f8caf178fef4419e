using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>What a job waits for now.</summary>
/// <param name="Timers">Its timers.</param>
/// <param name="Delay">How its last coat dries; null when not known.</param>
/// <param name="Watch">The watch over its soft film; null when there is nothing to watch.</param>
public sealed record JobNow(IReadOnlyList<JobTimer> Timers, DryingDelay? Delay, SoftFilmWatch? Watch);
