using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>The present state of the booth: the whole assessment with its age, and how sensors and outputs fare.</summary>
public sealed record NowAnswer
{
    /// <summary>Time of the assessment, UTC (RFC 3339); null before the first.</summary>
    public required DateTime? Time { get; init; }

    /// <summary>Age of the assessment, s, by the monotonic clock.</summary>
    public required double AgeS { get; init; }

    /// <summary>True when the assessment is missing or older than 5 s; the verdict is then wait.</summary>
    public required bool Stale { get; init; }

    /// <summary>Name of the shop.</summary>
    public required string Shop { get; init; }

    /// <summary>Name of the booth.</summary>
    public required string Booth { get; init; }

    /// <summary>May this coat be sprayed now? Advice about the finish only; never a statement that the air is safe.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Why, most limiting first; never empty.</summary>
    public required IReadOnlyList<Reason> Reasons { get; init; }

    /// <summary>The booth air; null when it is not known.</summary>
    public required AirFindings? Air { get; init; }

    /// <summary>What the drying-film model says of the coat in hand; null when it is not known.</summary>
    public required FilmFindings? Film { get; init; }

    /// <summary>How long the margin lasts if it goes on falling as in the last minutes; null when there is nothing to say. A straight line, no forecast.</summary>
    public required ClosingAnswer? Closing { get; init; }

    /// <summary>Whether the piece is warm enough not to draw dew, and else how long it takes to warm in this air; null when the air or the piece is not known.</summary>
    public required PieceWarming? Warming { get; init; }

    /// <summary>False while the wall clock may be wrong.</summary>
    public required bool ClockProven { get; init; }

    /// <summary>Every reading with its quality, by quantity.</summary>
    public required IReadOnlyList<ReadingAnswer> Readings { get; init; }

    /// <summary>The configured sensors.</summary>
    public required IReadOnlyList<SensorLine> Sensors { get; init; }

    /// <summary>How the outputs fare.</summary>
    public required IReadOnlyList<OutputLine> Outputs { get; init; }

    /// <summary>Where the scripted day stands; null on a real booth.</summary>
    public required DemoMoment? Demo { get; init; }

    /// <summary>Renders the state.</summary>
    public static NowAnswer Of(CurrentState state, PageSources sources) => new()
    {
        Time = state.Assessment?.Time.UtcDateTime,
        AgeS = Math.Round(state.Age.TotalSeconds, 2),
        Stale = state.IsStale,
        Shop = sources.Shop,
        Booth = sources.Booth,
        Verdict = state.Verdict,
        Reasons = state.Reasons,
        Air = state.Assessment?.Air,
        Film = state.Assessment?.Film,
        Closing = state.IsStale || state.Closing is not { } closing ? null : ClosingAnswer.Of(closing),
        Warming = state.IsStale ? null : state.Assessment?.Warming,
        ClockProven = state.Assessment?.Snapshot.ClockProven ?? false,
        Readings = state.Assessment is { } assessment
            ? [.. assessment.Snapshot.Readings.Values.OrderBy(r => r.Quantity).Select(r => ReadingAnswer.Of(r, sources.TemperatureUnit))]
            : [],
        Sensors = sources.Sensors,
        Outputs = sources.Outputs(),
        Demo = sources.Demo(),
    };
}
