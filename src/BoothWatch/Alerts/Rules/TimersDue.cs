using BoothWatch.Jobs;

namespace BoothWatch.Alerts.Rules;

/// <summary>
/// Waits of jobs that are over: the next coat, the next round with its sanding, buffing. Each is told once. A wait that was over
/// long before anybody looked is no news.
/// </summary>
public sealed class TimersDue : IAlertRule
{
    private const string Prefix = "timer:";
    private static readonly TimeSpan News = TimeSpan.FromHours(12);

    /// <inheritdoc/>
    public IEnumerable<AlertSign> Look(AlertState state, AlertMoment moment, AlertLimits limits)
    {
        if (moment.Jobs is not { } jobs)
        {
            return state.Open.Values.Where(episode => episode.Kind == AlertKind.TimerDue)
                .Select(episode => new AlertSign(episode.Key, episode.Kind, episode.Level, SignState.Holding, "", "", ""));
        }

        return jobs.SelectMany(watched => watched.Timers.Where(timer => timer.Kind != JobTimerKind.Hard).Select(timer => Look(watched.Job, timer, moment)));
    }

    private static AlertSign Look(Job job, JobTimer timer, AlertMoment moment)
    {
        TimeSpan? over = moment.Time - timer.Due;
        string title = timer.Kind switch
        {
            JobTimerKind.Buff => "Ready to buff",
            JobTimerKind.NextRound => "Next round is due",
            _ => "Next coat is due",
        };
        return new AlertSign(
            FormattableString.Invariant($"{Prefix}{job.LastCoat!.Id}:{timer.Kind}"),
            AlertKind.TimerDue,
            AlertLevel.Notice,
            over >= TimeSpan.Zero && over < News ? SignState.On : SignState.Holding,
            title,
            timer.Due is { } due ? $"{job.Details.Piece}: {timer.What}, since {moment.Clock(due)}" : $"{job.Details.Piece}: {timer.What}",
            "look at the verdict before you load the gun, and at the film before you touch it");
    }
}
