using BoothWatch.Jobs;

namespace BoothWatch.Records;

/// <summary>One coat of a record.</summary>
public sealed record RecordCoat
{
    /// <summary>Its place among the coats of the job, from 1, in order of start.</summary>
    public required int Place { get; init; }

    /// <summary>Number of the coat, unique over all jobs.</summary>
    public required long Id { get; init; }

    /// <summary>When it was marked, UTC; later than its start when somebody wrote it down afterwards.</summary>
    public required DateTimeOffset MarkedAt { get; init; }

    /// <summary>Where it was marked: <c>page</c>, <c>button</c>, <c>demo</c>.</summary>
    public required string MarkedBy { get; init; }

    /// <summary>What it was, with every correction.</summary>
    public required CoatDetails Details { get; init; }

    /// <summary>The air at its start, and the margin of its own mix in it; null when the air was not known.</summary>
    public required CoatMoment? AtStart { get; init; }

    /// <summary>The air from start to stop in whole minutes; null when nothing was recorded.</summary>
    public required CoatAir? WhileSprayed { get; init; }

    /// <summary>Set when it was begun without a verdict of spray.</summary>
    public required CoatOverride? Override { get; init; }

    /// <summary>How it came out; null until somebody says.</summary>
    public required CoatOutcome? Outcome { get; init; }

    /// <summary>What was said of the outcome.</summary>
    public required string OutcomeNote { get; init; }

    /// <summary>As marked and stopped, where it was corrected; else null.</summary>
    public required CoatDetails? Original { get; init; }

    /// <summary>The air that it was marked with, where it was corrected; else null.</summary>
    public required CoatMoment? OriginalAtStart { get; init; }

    /// <summary>The corrections that hold, oldest first.</summary>
    public required IReadOnlyList<CoatCorrection> Corrections { get; init; }
}
