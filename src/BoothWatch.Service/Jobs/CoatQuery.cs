using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>Which coats to list, newest first. What is null does not narrow the list; coats taken back are never listed.</summary>
public sealed record CoatQuery
{
    /// <summary>Coats begun at or after, UTC.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Coats begun before, UTC.</summary>
    public DateTimeOffset? To { get; init; }

    /// <summary>Part of the name of the piece, in any case.</summary>
    public string? Piece { get; init; }

    /// <summary>The job.</summary>
    public long? JobId { get; init; }

    /// <summary>Kind of coat.</summary>
    public CoatKind? Kind { get; init; }

    /// <summary>How it came out.</summary>
    public CoatOutcome? Outcome { get; init; }

    /// <summary>True: only coats whose outcome was marked.</summary>
    public bool OutcomeKnown { get; init; }

    /// <summary>Blush margin at least, °C.</summary>
    public double? MarginFromC { get; init; }

    /// <summary>Blush margin at most, °C.</summary>
    public double? MarginToC { get; init; }

    /// <summary>Rows to leave out from the start.</summary>
    public int Skip { get; init; }

    /// <summary>Rows to return, 1 to <see cref="JobQuery.MostRows"/>.</summary>
    public int Take { get; init; } = 50;
}
