using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>A timer in JSON.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="What">What may be done then.</param>
/// <param name="From">When the wait began, UTC.</param>
/// <param name="PlannedS">The wait of the schedule, s.</param>
/// <param name="WaitS">The wait in this air, s; null while nobody can say.</param>
/// <param name="Due">When it is over, UTC; null while nobody can say.</param>
/// <param name="LeftS">What is left, s; null while nobody can say.</param>
/// <param name="Why">Why it is longer than planned, or what is not known.</param>
public sealed record TimerLine(
    JobTimerKind Kind, string What, DateTimeOffset From, double PlannedS, double? WaitS, DateTimeOffset? Due, double? LeftS, string Why)
{
    /// <summary>The line for a timer.</summary>
    public static TimerLine Of(JobTimer timer, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(timer);
        return new(
            timer.Kind,
            timer.What,
            timer.From,
            timer.Planned.TotalSeconds,
            timer.Wait is { } wait ? Math.Round(wait.TotalSeconds) : null,
            timer.Due,
            timer.LeftAt(now) is { } left ? Math.Round(left.TotalSeconds) : null,
            timer.Why);
    }
}
