using BoothWatch.Checks;

namespace BoothWatch.Service.Checks;

/// <summary>A sensor with its checks.</summary>
public sealed record ChecksSensor
{
    /// <summary>Its configured name.</summary>
    public required string Name { get; init; }

    /// <summary>What and where it is.</summary>
    public required string Description { get; init; }

    /// <summary>True while it measures nothing real.</summary>
    public required bool Emulated { get; init; }

    /// <summary><c>in-use</c>, <c>being-checked</c> or <c>failed-check</c>.</summary>
    public required string State { get; init; }

    /// <summary>The first words.</summary>
    public required string Headline { get; init; }

    /// <summary>The rest in words.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>The decision of the worst of the last results; null when there is none.</summary>
    public required CheckOutcome? Outcome { get; init; }

    /// <summary>The last results, one a salt.</summary>
    public required IReadOnlyList<ChecksResult> Last { get; init; }

    /// <summary>When it is to be checked, UTC; null when it never was, which is at once.</summary>
    public required DateTimeOffset? Due { get; init; }

    /// <summary>True when it is to be checked now.</summary>
    public required bool IsDue { get; init; }

    /// <summary>Change of the deviation, % a year; null when not known.</summary>
    public required double? DriftPctPerYear { get; init; }

    /// <summary>The check that runs; null when none does.</summary>
    public required ChecksRunning? Running { get; init; }

    /// <summary>Past checks, newest first.</summary>
    public required IReadOnlyList<ChecksPast> Past { get; init; }
}
