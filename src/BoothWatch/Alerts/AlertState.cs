using System.Collections.Immutable;
using BoothWatch.Readings;

namespace BoothWatch.Alerts;

/// <summary>All that the rules remember from one moment to the next. Immutable, so that a step that could not be kept can be taken again.</summary>
public sealed record AlertState
{
    /// <summary>The state at the start.</summary>
    public static AlertState Start { get; } = new();

    /// <summary>The open episodes by key.</summary>
    public ImmutableDictionary<string, Episode> Open { get; init; } = ImmutableDictionary<string, Episode>.Empty;

    /// <summary>Since when a sign is on that has not lasted long enough, monotonic, by key and level.</summary>
    public ImmutableDictionary<(string Key, AlertLevel Level), TimeSpan> Budding { get; init; } =
        ImmutableDictionary<(string, AlertLevel), TimeSpan>.Empty;

    /// <summary>When the last episode of a key ended, monotonic, and how often it had come again.</summary>
    public ImmutableDictionary<string, (TimeSpan At, int Recurrence)> Ended { get; init; } =
        ImmutableDictionary<string, (TimeSpan, int)>.Empty;

    /// <summary>The spraying that is going on.</summary>
    public SprayingSession Session { get; init; } = SprayingSession.None;

    /// <summary>The margin of the last minutes.</summary>
    public MarginTrack Margin { get; init; } = MarginTrack.Empty;

    /// <summary>Sensors and quantities that were good at least once: what never answered is not lost.</summary>
    public ImmutableHashSet<(string Sensor, Quantity Quantity)> WereGood { get; init; } = [];

    /// <summary>What the episode of lost sensors is about.</summary>
    public LostSensors Lost { get; init; } = LostSensors.None;

    /// <summary>A state that goes on with episodes that were open when the program ended.</summary>
    public static AlertState Resume(IEnumerable<Episode> open)
    {
        ArgumentNullException.ThrowIfNull(open);
        ImmutableDictionary<string, Episode> episodes = open.ToImmutableDictionary(episode => episode.Key);
        return new AlertState
        {
            Open = episodes,
            Lost = episodes.ContainsKey(Rules.SensorsLost.Key) ? LostSensors.OfAnEarlierRun : LostSensors.None,
        };
    }

    /// <summary>The state that has seen a moment, before any rule has looked.</summary>
    internal AlertState See(AlertMoment moment, AlertLimits limits)
    {
        AlertState seen = this with
        {
            Session = Session.Next(moment, limits, Open.ContainsKey(Rules.VerdictWorse.Key)),
            Margin = Margin.Next(moment, limits),
            WereGood = WereGood.Union(Rules.SensorsLost.ReadingsOf(moment).Where(reading => reading.IsGood).Select(reading => (reading.Sensor, reading.Quantity))),
        };
        bool sessionBegins = seen.Session.IsActive && !Session.IsActive;
        return seen with
        {
            Lost = Lost.Next(Rules.SensorsLost.Lost(seen, moment, limits), Open.ContainsKey(Rules.SensorsLost.Key), sessionBegins),
        };
    }
}
