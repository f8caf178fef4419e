using System.Collections.Immutable;
using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Alerts;

/// <summary>When alerts begin and end. The figures are own choices; docs/alerts.md gives the reasons.</summary>
public sealed record AlertLimits
{
    /// <summary>How long a session lasts after the last sign of spraying.</summary>
    public TimeSpan SessionFor { get; init; } = TimeSpan.FromMinutes(30);

    /// <summary>The margin closes fast when a straight line through it leaves less than this.</summary>
    public TimeSpan MarginLeft { get; init; } = TimeSpan.FromMinutes(15);

    /// <summary>The time over which the line is laid.</summary>
    public TimeSpan MarginWindow { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>How long a sensor must be silent outside a session; in a session it is <see cref="SensorsLostInSession"/>.</summary>
    public TimeSpan SensorsLostAfter { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>How long a sensor must be silent in a session: a single bad answer is no loss.</summary>
    public static TimeSpan SensorsLostInSession => TimeSpan.FromSeconds(10);

    /// <summary>How long all must be well again, without a break, before an episode ends.</summary>
    public TimeSpan ClearAfter { get; init; } = TimeSpan.FromSeconds(120);

    /// <summary>Whether it is told that a cold piece has become warm. Default false.</summary>
    public bool TellPieceWarm { get; init; }

    /// <summary>The limits of the verdict.</summary>
    public VerdictPolicy Policy { get; init; } = new();

    /// <summary>When nobody wants to be disturbed; null: never.</summary>
    public QuietHours? Quiet { get; init; }

    /// <summary>Kinds that are told in quiet hours all the same.</summary>
    public ImmutableHashSet<AlertKind> BreakThrough { get; init; } = [AlertKind.VerdictWorse];

    /// <summary>Quantities that a person types in: they run out by themselves, which counts as lost in a session only.</summary>
    public ImmutableHashSet<Quantity> TypedByHand { get; init; } = [];

    /// <summary>The end of the quiet hours that hold <paramref name="kind"/> back at a moment; null when it may be told.</summary>
    /// <remarks>While the clock is not proven nobody knows the hour, and the alert is told.</remarks>
    public DateTimeOffset? QuietUntil(AlertKind kind, AlertMoment moment)
    {
        ArgumentNullException.ThrowIfNull(moment);
        return Quiet is { } quiet && moment.Assessment.Snapshot.ClockProven && !BreakThrough.Contains(kind)
            ? quiet.EndOf(moment.Time, moment.Zone)
            : null;
    }
}
