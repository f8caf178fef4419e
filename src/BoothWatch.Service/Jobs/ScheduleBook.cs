using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>The schedules of config/schedules.</summary>
/// <param name="Schedules">By id, in any case.</param>
public sealed record ScheduleBook(IReadOnlyDictionary<string, Schedule> Schedules)
{
    /// <summary>The schedule of a job; null when it has none, or one that is no longer there.</summary>
    public Schedule? Of(JobDetails details) =>
        details.Schedule is { } id && Schedules.TryGetValue(id, out Schedule? schedule) ? schedule : null;
}
