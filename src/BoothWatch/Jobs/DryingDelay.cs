namespace BoothWatch.Jobs;

/// <summary>By how much a coat dries slower than in the reference air, by the model's own drying runs, and why.</summary>
public sealed record DryingDelay
{
    /// <summary>Time to set of this coat in its air, s; null when it does not set within the longest run.</summary>
    public required double? TimeToSetS { get; init; }

    /// <summary>Time to set of the same coat in the reference air without retarder, s.</summary>
    public required double ReferenceTimeToSetS { get; init; }

    /// <summary>What every wait is multiplied by, 1 or more; null when the coat does not set.</summary>
    public required double? Factor { get; init; }

    /// <summary>What lengthens it, most first; each alone brought back to the reference.</summary>
    public required IReadOnlyList<DelayCause> Causes { get; init; }
}
