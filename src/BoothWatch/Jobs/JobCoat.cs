namespace BoothWatch.Jobs;

/// <summary>One coat of a job, as it stands after every entry.</summary>
public sealed record JobCoat
{
    /// <summary>Number of the coat, unique over all jobs.</summary>
    public required long Id { get; init; }

    /// <summary>The job.</summary>
    public required long JobId { get; init; }

    /// <summary>Its place among the coats of the job, from 1, in order of start.</summary>
    public int Place { get; init; }

    /// <summary>Where it was marked: <c>page</c>, <c>button</c>, <c>demo</c>.</summary>
    public required string MarkedBy { get; init; }

    /// <summary>What holds: the original with every correction.</summary>
    public required CoatDetails Details { get; init; }

    /// <summary>As marked and stopped, without corrections.</summary>
    public required CoatDetails Original { get; init; }

    /// <summary>The air it was begun in and its margin; null when not known.</summary>
    public required CoatMoment? Moment { get; init; }

    /// <summary>How it came out; null until somebody says.</summary>
    public CoatOutcome? Outcome { get; init; }

    /// <summary>What was said of the outcome.</summary>
    public string OutcomeNote { get; init; } = "";

    /// <summary>The corrections that hold, oldest first.</summary>
    public IReadOnlyList<JobEntry> Corrections { get; init; } = [];

    /// <summary>True while it is being sprayed, as far as anybody marked.</summary>
    public bool IsOpen => Details.Stop is null;

    /// <summary>When its film began to dry for good: the end of spraying, or the start where no end was marked.</summary>
    public DateTimeOffset DriesFrom => Details.Stop ?? Details.Start;
}
