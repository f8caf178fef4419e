using System.Globalization;

namespace BoothWatch.Jobs;

/// <summary>Works out what a job waits for, from its schedule, its last coat and how that dries.</summary>
public static class JobTimers
{
    /// <summary>The timers of a job, in the order in which they fall due in the reference air; none before the first coat and after the job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="schedule">Its schedule.</param>
    /// <param name="delay">How the last coat dries in its air; null when that is not known.</param>
    public static IReadOnlyList<JobTimer> Of(Job job, Schedule schedule, DryingDelay? delay)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(schedule);
        if (!job.IsRunning || job.LastCoat is not { } coat)
        {
            return [];
        }

        string why = delay?.Words() ?? "the air since this coat is not known: at least as long as planned, and longer in cold air";
        JobTimer Timer(JobTimerKind kind, string what, TimeSpan planned) =>
            new(kind, what, coat.DriesFrom, planned, Due(coat.DriesFrom, planned, delay), why);

        List<JobTimer> timers = [];
        if (schedule.StepAt(coat.Place) is { } step && schedule.StepAt(coat.Place + 1) is { } next)
        {
            timers.Add(schedule.EndsRound(coat.Place)
                ? Timer(JobTimerKind.NextRound, RoundWords(schedule, coat.Place, next), step.Wait)
                : Timer(JobTimerKind.NextCoat, $"{next.Coat.ToString().ToLowerInvariant()} coat", step.Wait));
        }

        timers.Add(Timer(JobTimerKind.Hard, "film hard enough to leave unwatched", schedule.SoftFor));
        if (coat.Place >= schedule.CoatCount && schedule.HangBeforeBuffing is { } hang)
        {
            timers.Add(Timer(JobTimerKind.Buff, "buff", hang));
        }

        return timers;
    }

    private static DateTimeOffset? Due(DateTimeOffset from, TimeSpan planned, DryingDelay? delay) =>
        delay is null ? from + planned : delay.Factor is { } factor ? from + (planned * factor) : null;

    private static string RoundWords(Schedule schedule, int place, ScheduleStep next)
    {
        int round = (place / schedule.Round.Count) + 1;
        string sand = schedule.SandNoCoarserThanGrit is { } grit
            ? string.Create(CultureInfo.InvariantCulture, $"knock off dust with nothing coarser than {grit} grit, then ")
            : "";
        return string.Create(
            CultureInfo.InvariantCulture, $"round {round} of {schedule.Rounds}: {sand}{next.Coat.ToString().ToLowerInvariant()} coat");
    }
}
