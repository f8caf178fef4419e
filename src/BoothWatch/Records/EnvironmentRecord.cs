namespace BoothWatch.Records;

/// <summary>
/// What a job was sprayed in: the piece, its coats with the air of each, what was overridden, corrected or taken back, the sensors, and how
/// far all of it can be trusted. It says nothing of when it was written out, so that the same data is the same record on any day.
/// </summary>
/// <remarks>Figures are rounded once, here: temperatures, margins and humidity to 0.01, pressure to 1 Pa. Every output renders the same figures.</remarks>
public sealed record EnvironmentRecord
{
    /// <summary>The layout that this program writes.</summary>
    public const int PresentFormat = 1;

    /// <summary>The caution that goes with every record.</summary>
    public const string CautionText =
        "Advice about the finish, no statement on safety: it does not say that the air was safe to breathe or could not ignite.";

    /// <summary>Version of the layout; rises when a field changes its meaning.</summary>
    public required int Format { get; init; }

    /// <summary>Name of the shop.</summary>
    public required string Shop { get; init; }

    /// <summary>Name of the booth.</summary>
    public required string Booth { get; init; }

    /// <summary>True when nothing of it was real: an invented job, or air measured by emulated sensors.</summary>
    public required bool IsDemo { get; init; }

    /// <summary>The job.</summary>
    public required RecordJob Job { get; init; }

    /// <summary>Its coats in order of start.</summary>
    public required IReadOnlyList<RecordCoat> Coats { get; init; }

    /// <summary>Coats that were marked and taken back, in the order of marking.</summary>
    public required IReadOnlyList<TakenBackCoat> TakenBack { get; init; }

    /// <summary>The sensors as configured when the record was made; the journal does not keep which part measured a coat.</summary>
    public required IReadOnlyList<RecordSensor> Sensors { get; init; }

    /// <summary>The air around the coats, in order of time.</summary>
    public required IReadOnlyList<AirStretch> Air { get; init; }

    /// <summary>How far the figures can be trusted and what is missing, in plain sentences.</summary>
    public required IReadOnlyList<string> Uncertainty { get; init; }

    /// <summary>What the record is not.</summary>
    public required string Caution { get; init; }
}
