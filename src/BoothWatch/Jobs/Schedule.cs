namespace BoothWatch.Jobs;

/// <summary>Rounds of coats with waits, as read from config/schedules. Its times hold in the reference air; the model lengthens them.</summary>
public sealed record Schedule
{
    /// <summary>Name used in config/schedules.</summary>
    public required string Id { get; init; }

    /// <summary>What it is for, for people.</summary>
    public required string Description { get; init; }

    /// <summary>Where its times come from, for example <c>common practice, no source</c>.</summary>
    public required string Basis { get; init; }

    /// <summary>The coats of one round, in order; at least one.</summary>
    public required IReadOnlyList<ScheduleStep> Round { get; init; }

    /// <summary>Number of rounds, 1 or more.</summary>
    public required int Rounds { get; init; }

    /// <summary>Coarsest grit between rounds (a lower number is coarser); null: no word about sanding.</summary>
    public int? SandNoCoarserThanGrit { get; init; }

    /// <summary>How long the film of the last coat counts as soft: the watch, in the reference air.</summary>
    public required TimeSpan SoftFor { get; init; }

    /// <summary>How long the piece hangs after the last coat before buffing; null: no buffing.</summary>
    public TimeSpan? HangBeforeBuffing { get; init; }

    /// <summary>Number of coats in all.</summary>
    public int CoatCount => Round.Count * Rounds;

    /// <summary>The step that a coat of the job stands for, by its place from 1; null beyond the schedule.</summary>
    public ScheduleStep? StepAt(int place) => place >= 1 && place <= CoatCount ? Round[(place - 1) % Round.Count] : null;

    /// <summary>True when the coat at a place, from 1, ends a round.</summary>
    public bool EndsRound(int place) => place % Round.Count == 0;
}
