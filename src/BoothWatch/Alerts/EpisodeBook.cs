using System.Collections.Immutable;

namespace BoothWatch.Alerts;

/// <summary>
/// Turns signs into episodes, so that one trouble is one message: an episode begins when its sign has lasted, ends when all has been
/// well without a break, and is told once, after quiet hours where it has to wait for them.
/// </summary>
/// <remarks>
/// Trouble that comes again within <see cref="Recurring"/> of its end must stay away twice as long the next time, up to eight times, so
/// that a slow flapping does not become a row of messages.
/// </remarks>
public static class EpisodeBook
{
    private const int MostDoublings = 3;

    /// <summary>Trouble that comes again so soon after its end is the same trouble.</summary>
    public static TimeSpan Recurring => TimeSpan.FromMinutes(30);

    /// <summary>Takes the signs of a moment.</summary>
    /// <param name="state">The state, which has seen the moment.</param>
    /// <param name="signs">What the rules see; an open episode without a sign lapses.</param>
    /// <param name="moment">The moment.</param>
    /// <param name="limits">The limits.</param>
    public static AlertStep Enter(AlertState state, IReadOnlyList<AlertSign> signs, AlertMoment moment, AlertLimits limits)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(signs);
        ArgumentNullException.ThrowIfNull(moment);
        ArgumentNullException.ThrowIfNull(limits);
        List<EpisodeChange> changes = [];
        foreach (AlertSign sign in signs)
        {
            state = Take(state, sign, moment, limits, changes);
        }

        foreach (Episode gone in state.Open.Values.Where(episode => signs.All(sign => sign.Key != episode.Key)).OrderBy(episode => episode.Key, StringComparer.Ordinal).ToArray())
        {
            changes.Add(Change(EpisodeStep.Lapsed, gone));
            state = Close(state, gone, moment);
        }

        HashSet<(string, AlertLevel)> on = [.. signs.Where(sign => sign.State == SignState.On).Select(sign => (sign.Key, sign.Level))];
        state = state with { Budding = state.Budding.RemoveRange(state.Budding.Keys.Where(key => !on.Contains(key)).ToArray()) };
        return Tell(state, moment, limits, changes);
    }

    private static AlertState Take(AlertState state, AlertSign sign, AlertMoment moment, AlertLimits limits, List<EpisodeChange> changes)
    {
        Episode? open = state.Open.GetValueOrDefault(sign.Key);
        switch (sign.State)
        {
            case SignState.On when open is null || sign.Level > open.Level:
                return Begin(state, open, sign, moment, changes);
            case SignState.On when sign.Level == open.Level:
                return Keep(state, open with { WellSince = null, Title = sign.Title, Finding = sign.Finding, Action = sign.Action });
            case SignState.On or SignState.Holding when open is not null:
                return Keep(state, open with { WellSince = null });
            case SignState.Off when open is not null:
                TimeSpan since = open.WellSince ?? moment.Now;
                if (moment.Now - since < limits.ClearAfter * Math.Pow(2, Math.Min(open.Recurrence, MostDoublings)))
                {
                    return Keep(state, open with { WellSince = since });
                }

                DateTimeOffset? notBefore = limits.QuietUntil(open.Kind, moment);
                changes.Add(new EpisodeChange(EpisodeStep.Cleared, open, sign.Title, sign.Finding, sign.Action, notBefore));
                return Close(state, open, moment);
            default:
                return state;
        }
    }

    private static AlertState Begin(AlertState state, Episode? open, AlertSign sign, AlertMoment moment, List<EpisodeChange> changes)
    {
        (string, AlertLevel) bud = (sign.Key, sign.Level);
        TimeSpan since = state.Budding.GetValueOrDefault(bud, moment.Now);
        if (moment.Now - since < sign.After)
        {
            state = state with { Budding = state.Budding.SetItem(bud, since) };
            return open is null ? state : Keep(state, open with { WellSince = null });
        }

        int recurrence = open?.Recurrence ?? 0;
        if (open is not null)
        {
            changes.Add(Change(EpisodeStep.Replaced, open));
        }
        else if (state.Ended.TryGetValue(sign.Key, out (TimeSpan At, int Recurrence) last) && moment.Now - last.At <= Recurring)
        {
            recurrence = last.Recurrence + 1;
        }

        var begun = new Episode(sign.Key, sign.Kind, sign.Level, moment.Time, sign.Title, sign.Finding, sign.Action) { Recurrence = recurrence };
        changes.Add(Change(EpisodeStep.Began, begun));
        return Keep(state with { Budding = state.Budding.Remove(bud) }, begun);
    }

    private static AlertStep Tell(AlertState state, AlertMoment moment, AlertLimits limits, List<EpisodeChange> changes)
    {
        foreach (Episode episode in state.Open.Values
            .Where(episode => episode is { IsTold: false, WellSince: null } && limits.QuietUntil(episode.Kind, moment) is null)
            .OrderByDescending(episode => episode.Level).ThenBy(episode => episode.Key, StringComparer.Ordinal).ToArray())
        {
            Episode told = episode with { IsTold = true };
            changes.Add(Change(EpisodeStep.Told, told));
            state = Keep(state, told);
        }

        return new AlertStep(state, [.. changes]);
    }

    private static EpisodeChange Change(EpisodeStep step, Episode episode) => new(step, episode, episode.Title, episode.Finding, episode.Action);

    private static AlertState Keep(AlertState state, Episode episode) => state with { Open = state.Open.SetItem(episode.Key, episode) };

    // What ended long ago is forgotten, so that keys of old jobs do not pile up.
    private static AlertState Close(AlertState state, Episode episode, AlertMoment moment) => state with
    {
        Open = state.Open.Remove(episode.Key),
        Ended = state.Ended
            .RemoveRange(state.Ended.Where(ended => moment.Now - ended.Value.At > Recurring).Select(ended => ended.Key).ToArray())
            .SetItem(episode.Key, (moment.Now, episode.Recurrence)),
    };
}
