using BoothWatch.Jobs;

namespace BoothWatch.Alerts.Rules;

/// <summary>
/// The piece of a job comes near the dew point, or under it, while its film is soft. While an episode of the verdict is open in a
/// session, that one speaks.
/// </summary>
public sealed class SoftFilm : IAlertRule
{
    // How far above the wanted clearance the piece must be before it counts as safe again, °C. Own choice.
    private const double SafeAboveC = 0.5;
    private static readonly TimeSpan Lasting = TimeSpan.FromSeconds(60);

    /// <inheritdoc/>
    public IEnumerable<AlertSign> Look(AlertState state, AlertMoment moment, AlertLimits limits)
    {
        if (moment.Jobs is not { } jobs)
        {
            return state.Open.Values.Where(episode => episode.Kind == AlertKind.SoftFilm)
                .Select(episode => new AlertSign(episode.Key, episode.Kind, episode.Level, SignState.Holding, "", "", ""));
        }

        bool told = state.Session.IsActive && state.Open.ContainsKey(VerdictWorse.Key);
        return jobs.Where(watched => watched.Watch is not null).Select(watched => Look(watched.Job, watched.Watch!, told, limits));
    }

    private static AlertSign Look(Job job, SoftFilmWatch watch, bool told, AlertLimits limits)
    {
        bool risk = watch.State is WatchState.Close or WatchState.Wet;
        bool safe = watch.State == WatchState.Safe && watch.ClearanceC >= limits.Policy.DewClearanceC + SafeAboveC;
        SignState seen = risk && !told ? SignState.On : safe ? SignState.Off : SignState.Holding;
        string title = safe ? "Soft film is safe again" : watch.State == WatchState.Wet ? "Dew on a soft film" : "Soft film near the dew point";
        return new AlertSign(
            FormattableString.Invariant($"film:{job.Id}"),
            AlertKind.SoftFilm,
            watch.State == WatchState.Wet ? AlertLevel.Urgent : AlertLevel.Warning,
            seen,
            title,
            $"{job.Details.Piece}: {watch.Finding}",
            watch.Action)
        {
            After = Lasting,
        };
    }
}
