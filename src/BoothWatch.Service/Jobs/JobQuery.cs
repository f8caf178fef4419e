namespace BoothWatch.Service.Jobs;

/// <summary>Which jobs to list, newest first. What is null does not narrow the list.</summary>
public sealed record JobQuery
{
    /// <summary>Most rows that one answer carries.</summary>
    public const int MostRows = 200;

    /// <summary>Jobs started at or after, UTC.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Jobs started before, UTC.</summary>
    public DateTimeOffset? To { get; init; }

    /// <summary>Part of the name of the piece, in any case.</summary>
    public string? Piece { get; init; }

    /// <summary>True: running jobs; false: finished ones.</summary>
    public bool? Running { get; init; }

    /// <summary>Rows to leave out from the start.</summary>
    public int Skip { get; init; }

    /// <summary>Rows to return, 1 to <see cref="MostRows"/>.</summary>
    public int Take { get; init; } = 50;
}
