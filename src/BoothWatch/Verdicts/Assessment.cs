using System.Collections.Immutable;
using BoothWatch.Readings;

namespace BoothWatch.Verdicts;

/// <summary>Everything decided at one tick. Every output renders it and computes nothing.</summary>
public sealed record Assessment
{
    /// <summary>Wall-clock time of the tick, UTC.</summary>
    public required DateTimeOffset Time { get; init; }

    /// <summary>What was measured.</summary>
    public required BoothSnapshot Snapshot { get; init; }

    /// <summary>The booth air; null when it is not known.</summary>
    public required AirFindings? Air { get; init; }

    /// <summary>What the model says of the coat in hand; null when the air or the piece is not known.</summary>
    public required FilmFindings? Film { get; init; }

    /// <summary>Whether the piece is warm enough, and else when; null when the air or the piece is not known.</summary>
    public PieceWarming? Warming { get; init; }

    /// <summary>The verdict after the dwell.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Why, most limiting first; never empty.</summary>
    public required ImmutableArray<Reason> Reasons { get; init; }
}
