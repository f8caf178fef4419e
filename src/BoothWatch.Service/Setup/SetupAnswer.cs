namespace BoothWatch.Service.Setup;

/// <summary>How far the booth is set up.</summary>
public sealed record SetupAnswer
{
    /// <summary>The configuration file.</summary>
    public required SetupFile File { get; init; }

    /// <summary>True while any sensor is emulated.</summary>
    public required bool IsDemo { get; init; }

    /// <summary>The settings that may be changed here.</summary>
    public required IReadOnlyList<SetupSetting> Settings { get; init; }

    /// <summary>What may be chosen: kinds, and ids of config/materials.</summary>
    public required SetupChoices Choices { get; init; }

    /// <summary>The steps of the checklist.</summary>
    public required IReadOnlyList<SetupStep> Steps { get; init; }

    /// <summary>The outputs of the booth light.</summary>
    public required IReadOnlyList<SetupLamp> Lamps { get; init; }

    /// <summary>emulated or real: where the light goes.</summary>
    public required string LightSource { get; init; }

    /// <summary>Commands that show every lamp, with the service stopped.</summary>
    public required IReadOnlyList<string> LampCommands { get; init; }

    /// <summary>How to start anew, so that a change takes effect.</summary>
    public required string Restart { get; init; }
}

/// <summary>The configuration file.</summary>
/// <param name="Path">Its full path; null when the program runs on built-in defaults.</param>
/// <param name="Version">A mark of its text; a change carries it.</param>
/// <param name="Refusal">Why it cannot be changed here, with what to do; null when it can.</param>
/// <param name="IsBesideProgram">True when it is the copy beside the program, which an update replaces.</param>
/// <param name="Errors">What is wrong with the file as it stands: the next start would fail.</param>
/// <param name="Undo">What an undo would change; null when there is no earlier version.</param>
public sealed record SetupFile(string? Path, string Version, string? Refusal, bool IsBesideProgram, IReadOnlyList<string> Errors, SetupUndo? Undo);

/// <summary>What an undo would change.</summary>
/// <param name="Time">When the earlier version was put aside.</param>
/// <param name="Changes">Each setting that would change, with its values.</param>
public sealed record SetupUndo(DateTimeOffset Time, IReadOnlyList<string> Changes);

/// <summary>A setting.</summary>
/// <param name="Key">Its full key.</param>
/// <param name="Value">The value in the file, or the default.</param>
/// <param name="Running">The value that the program runs with.</param>
/// <param name="FromEnvironment">True when an environment variable overrides the file.</param>
public sealed record SetupSetting(string Key, object? Value, object? Running, bool FromEnvironment)
{
    /// <summary>True when the file says something else than the program runs with.</summary>
    public bool WaitsForStart => !Equals(Value, Running);
}

/// <summary>What may be chosen.</summary>
/// <param name="Kinds">Kinds of coat.</param>
/// <param name="Lacquers">Ids of lacquers.</param>
/// <param name="Thinners">Ids of thinners.</param>
/// <param name="Retarders">Ids of retarders.</param>
/// <param name="Substrates">Ids of substrates.</param>
public sealed record SetupChoices(
    IReadOnlyList<string> Kinds,
    IReadOnlyList<string> Lacquers,
    IReadOnlyList<string> Thinners,
    IReadOnlyList<string> Retarders,
    IReadOnlyList<string> Substrates);

/// <summary>A step of the checklist.</summary>
/// <param name="Id">sensors, booth, materials, light or alerts.</param>
/// <param name="Done">True when nothing is left to do.</param>
/// <param name="State">How it stands, for people.</param>
public sealed record SetupStep(string Id, bool Done, string State);

/// <summary>An output of the booth light.</summary>
/// <param name="Id">green, yellow, red or buzzer.</param>
/// <param name="Pin">Its GPIO number.</param>
/// <param name="Shows">What it shows, for people.</param>
/// <param name="Confirmed">When a person saw it, with this pin; null when nobody did.</param>
public sealed record SetupLamp(string Id, int Pin, string Shows, DateTimeOffset? Confirmed);
