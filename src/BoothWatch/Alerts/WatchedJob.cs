using BoothWatch.Jobs;

namespace BoothWatch.Alerts;

/// <summary>A running job as the rules see it.</summary>
/// <param name="Job">The job.</param>
/// <param name="Timers">What it waits for.</param>
/// <param name="Watch">The watch over its soft film; null when there is nothing to watch.</param>
public sealed record WatchedJob(Job Job, IReadOnlyList<JobTimer> Timers, SoftFilmWatch? Watch);
