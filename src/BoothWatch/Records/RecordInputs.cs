using BoothWatch.Jobs;

namespace BoothWatch.Records;

/// <summary>Everything that a record is made from.</summary>
public sealed record RecordInputs
{
    /// <summary>The job with its entries.</summary>
    public required Job Job { get; init; }

    /// <summary>Name of the shop.</summary>
    public required string Shop { get; init; }

    /// <summary>Name of the booth.</summary>
    public required string Booth { get; init; }

    /// <summary>True when the job was invented or its air was measured by emulated sensors.</summary>
    public required bool IsDemo { get; init; }

    /// <summary>The air from start to stop of a coat, in whole minutes.</summary>
    public required Func<JobCoat, CoatAir> AirOf { get; init; }

    /// <summary>The reasons of the verdict at a moment, as the journal has them; empty when it has none.</summary>
    public required Func<CoatMoment, IReadOnlyList<string>> ReasonsAt { get; init; }

    /// <summary>The air around the coats.</summary>
    public required IReadOnlyList<AirStretch> Air { get; init; }

    /// <summary>The sensors of the booth.</summary>
    public required IReadOnlyList<RecordSensor> Sensors { get; init; }
}
