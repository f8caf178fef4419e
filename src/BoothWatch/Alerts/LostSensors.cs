using System.Collections.Immutable;
using BoothWatch.Readings;

namespace BoothWatch.Alerts;

/// <summary>What the episode of lost sensors is about: which ones its message names, and which ones must read well before it is over.</summary>
/// <param name="Told">
/// Lost in this session when its episode began, or about to begin it: of these the message speaks. What falls silent later, and what an
/// episode from before the session is about, is in no message of this session.
/// </param>
/// <param name="Missed">Lost at any time since the episode began; null when it began in an earlier run, so that nobody knows.</param>
public sealed record LostSensors(ImmutableHashSet<(string Sensor, Quantity Quantity)> Told, ImmutableHashSet<(string Sensor, Quantity Quantity)>? Missed)
{
    /// <summary>Nothing is lost.</summary>
    public static LostSensors None { get; } = new([], []);

    /// <summary>An episode of an earlier run.</summary>
    public static LostSensors OfAnEarlierRun { get; } = new([], null);

    /// <summary>What it is about a moment later.</summary>
    /// <param name="lost">What is lost now.</param>
    /// <param name="isOpen">True while the episode is open.</param>
    /// <param name="sessionBegins">True at the first moment of a session.</param>
    public LostSensors Next(IEnumerable<Reading> lost, bool isOpen, bool sessionBegins)
    {
        ImmutableHashSet<(string, Quantity)> now = [.. lost.Select(reading => (reading.Sensor, reading.Quantity))];
        return isOpen ? new LostSensors(sessionBegins ? [] : Told, Missed?.Union(now)) : new LostSensors(now, now);
    }
}
