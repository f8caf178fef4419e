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

    /// <summary>What the file says of each sensor.</summary>
    public required IReadOnlyList<SetupRole> Roles { get; init; }

    /// <summary>emulated or real: where the light goes by the file.</summary>
    public required string FileLightSource { get; init; }

    /// <summary>Whether parts are proved one at a time, by the file.</summary>
    public required bool FileProving { get; init; }

    /// <summary>Keys of this page whose value in the file is another than the program runs with.</summary>
    public required IReadOnlyList<string> Waiting { get; init; }

    /// <summary>What may be chosen: kinds, and ids of config/materials.</summary>
    public required SetupChoices Choices { get; init; }

    /// <summary>The steps of the checklist.</summary>
    public required IReadOnlyList<SetupStep> Steps { get; init; }

    /// <summary>The outputs of the booth light.</summary>
    public required IReadOnlyList<SetupLamp> Lamps { get; init; }

    /// <summary>emulated or real: where the light goes.</summary>
    public required string LightSource { get; init; }

    /// <summary>What to do before the commands.</summary>
    public required string LampsFirst { get; init; }

    /// <summary>Commands that show every lamp, with the service stopped, and start it again.</summary>
    public required IReadOnlyList<string> LampCommands { get; init; }

    /// <summary>How to start anew, so that a change takes effect.</summary>
    public required string Restart { get; init; }
}
