using BoothWatch.Jobs;

namespace BoothWatch.Reviews;

/// <summary>What happened to a coat, as far as its air explains it.</summary>
public sealed record CoatReview
{
    /// <summary>When the coat landed, UTC.</summary>
    public required DateTimeOffset Landed { get; init; }

    /// <summary>When the film set in the model, UTC; null when it did not or is not known.</summary>
    public DateTimeOffset? Set { get; init; }

    /// <summary>How it came out; null until somebody says.</summary>
    public required CoatOutcome? Outcome { get; init; }

    /// <summary>What the model says of it.</summary>
    public required ReviewFinding Finding { get; init; }

    /// <summary>The answer in one or two sentences.</summary>
    public required string Headline { get; init; }

    /// <summary>What happened, in sentences.</summary>
    public IReadOnlyList<string> Story { get; init; } = [];

    /// <summary>What took it towards blush, most first; empty when it holds or is not known.</summary>
    public IReadOnlyList<ReviewCause> Causes { get; init; } = [];

    /// <summary>What would have held, and what not; empty when it holds or is not known.</summary>
    public IReadOnlyList<ReviewRemedy> Remedies { get; init; } = [];

    /// <summary>What to look at, where the air does not explain how it came out. Common practice, no source.</summary>
    public IReadOnlyList<string> Checks { get; init; } = [];

    /// <summary>The figures; null when not known.</summary>
    public ReviewFigures? Figures { get; init; }

    /// <summary>The air from an hour before to two hours after the landing.</summary>
    public IReadOnlyList<ReviewAirPoint> Air { get; init; } = [];

    /// <summary>The film from landing to set.</summary>
    public IReadOnlyList<ReviewFilmPoint> Film { get; init; } = [];
}
