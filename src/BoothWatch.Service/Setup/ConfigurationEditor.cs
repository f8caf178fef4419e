using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Setup;

/// <summary>
/// Changes the configuration file on behalf of the setup page. The whole new text must pass the check that <c>config check</c> makes before
/// a byte of it is written. The running program keeps what it has read at its start.
/// </summary>
/// <param name="running">The configuration that the program runs with.</param>
/// <param name="logger">Takes note of every change.</param>
/// <param name="environment">What environment variables say, by full key; null: those of this process.</param>
internal sealed partial class ConfigurationEditor(ConfigurationFile running, ILogger<ConfigurationEditor> logger, IConfiguration? environment = null)
{
    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly string Beside = Path.Combine(AppContext.BaseDirectory, "config") + Path.DirectorySeparatorChar;

    private readonly IConfiguration _environment =
        environment ?? new ConfigurationBuilder().AddEnvironmentVariables(ConfigurationFile.EnvironmentPrefix).Build();

    private readonly Lock _one = new();
    private readonly ConfigurationVersions? _versions = running.Path is null ? null : new ConfigurationVersions(running.Path);

    /// <summary>The file; null when the program runs without one.</summary>
    public string? FilePath => running.Path;

    /// <summary>True when the file is the copy beside the program, which an update replaces.</summary>
    public bool IsBesideProgram => running.Path is { } path && path.StartsWith(Beside, StringComparison.Ordinal);

    /// <summary>Why nothing can be changed here, with what to do; null when it can.</summary>
    public string? Refusal => _versions is null
        ? $"BoothWatch runs on its built-in defaults, without a file; copy {ConfigurationFile.DefaultRelativePath} of the program to a place of your own and start with --config and its path"
        : _versions.Refusal;

    /// <summary>The commands that let this service write the file, where nothing but its rights keeps it from that; else none.</summary>
    /// <param name="isUnit">True when systemd runs the service.</param>
    public IReadOnlyList<string> Unlocking(bool isUnit)
    {
        if (_versions is null || Refusal is null || !File.Exists(running.Path) || !_versions.IsLocked)
        {
            return [];
        }

        string folder = LampCommand.Quoted(Path.GetDirectoryName(running.Path)!);
        string own = $"sudo chown {Environment.UserName}: {folder} {LampCommand.Quoted(running.Path)}";
        return isUnit
            ?
            [
                own,
                "sudo mkdir -p /etc/systemd/system/boothwatch.service.d",
                $"printf '[Service]\\nReadWritePaths=%s\\n' {folder} | sudo tee /etc/systemd/system/boothwatch.service.d/setup.conf",
                "sudo systemctl daemon-reload",
                "sudo systemctl restart boothwatch",
            ]
            : [own];
    }

    /// <summary>Whether an environment variable gives a setting; it wins over the file.</summary>
    public bool IsFromEnvironment(string key) => _environment[key] is not null;

    /// <summary>The file as it is now, which somebody may have edited since the start, and a short mark of its text.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    public (ConfigurationFile File, string Version) Present()
    {
        if (_versions is null)
        {
            return (running, "");
        }

        byte[] text = _versions.Read();
        return (Parse(text), Mark(text));
    }

    /// <summary>What the next undo would change, with the time at which that version was put aside; null when there is no earlier version.</summary>
    /// <exception cref="IOException">A file cannot be read.</exception>
    public (DateTimeOffset Time, IReadOnlyList<string> Changes)? NextUndo()
    {
        if (_versions is null || !File.Exists(running.Path))
        {
            return null;
        }

        byte[] text = _versions.Read();
        return _versions.Previous(text) is { } previous ? (previous.Time, ConfigurationDifference.Words(Parse(text), Parse(previous.Text))) : null;
    }

    /// <summary>What a change of some settings would do, and what the check says of it. Nothing is written.</summary>
    /// <param name="values">Full keys and their values: texts, numbers, true, false or null.</param>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public EditPreview Preview(IReadOnlyDictionary<string, JsonElement> values)
    {
        (ConfigurationFile before, _) = Present();
        if (_versions is null)
        {
            return new EditPreview(before, [], [Refusal!]);
        }

        try
        {
            byte[] present = _versions.Read();
            byte[] text = Draft(present, values);
            ConfigurationFile after = Parse(text);
            return new EditPreview(
                after,
                [.. ConfigurationDifference.Between(before, after)],
                Objections(text, present, values));
        }
        catch (InvalidDataException wrong)
        {
            return new EditPreview(before, [], [$"{running.Path}: {wrong.Message}"]);
        }
    }

    /// <summary>Changes some settings.</summary>
    /// <param name="version">Mark of the text that the person saw.</param>
    /// <param name="values">Full keys and their values: texts, numbers, true, false or null.</param>
    /// <exception cref="IOException">The disk refuses; the file is as it was.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there; the file is as it was.</exception>
    public EditOutcome Change(string version, IReadOnlyDictionary<string, JsonElement> values) => Edit(version, (versions, present) =>
    {
        try
        {
            byte[] text = Draft(present, values);
            if (Objections(text, present, values) is { Count: > 0 } errors)
            {
                return EditOutcome.Wrong(errors);
            }

            if (text == present)
            {
                return EditOutcome.Nothing;
            }

            string[] changed = [.. ConfigurationDifference.Between(Parse(present), Parse(text)).Select(change => change.Key)];
            versions.Replace(text);
            LogChanged(running.Path!, changed);
            return EditOutcome.Written;
        }
        catch (InvalidDataException wrong)
        {
            return EditOutcome.Wrong([$"{running.Path}: {wrong.Message}"]);
        }
    });

    /// <summary>Puts the version before the present one back.</summary>
    /// <param name="version">Mark of the text that the person saw.</param>
    /// <exception cref="IOException">The disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there; the file is as it was.</exception>
    public EditOutcome Undo(string version) => Edit(version, (versions, present) =>
    {
        if (versions.Previous(present) is not { } previous)
        {
            return EditOutcome.Refused("there is no earlier version of the file");
        }

        IReadOnlyList<string> errors = ConfigurationCheck.Errors(Parse(previous.Text));
        if (errors.Count > 0)
        {
            return EditOutcome.Wrong(errors);
        }

        versions.Restore(previous.Number, previous.Text);
        LogUndone(running.Path!);
        return EditOutcome.Written;
    });

    // One edit at a time, of a file that may be edited and is still what the person saw.
    private EditOutcome Edit(string version, Func<ConfigurationVersions, byte[], EditOutcome> edit)
    {
        lock (_one)
        {
            if (Refusal is { } refusal)
            {
                return EditOutcome.Refused(refusal);
            }

            byte[] present = _versions!.Read();
            return Mark(present) == version ? edit(_versions, present) : EditOutcome.Changed;
        }
    }

    // The same array when all values were so already.
    private byte[] Draft(byte[] present, IReadOnlyDictionary<string, JsonElement> values)
    {
        IConfiguration held = Parse(present).Configuration;
        byte[] text = present;
        foreach ((string key, JsonElement value) in values.Where(pair => !IsSame(SettingValues.Held(held, pair.Key), pair.Value)))
        {
            text = JsonTextEdit.Set(text, key, JsonSerializer.Serialize(value, Readable));
        }

        return text;
    }

    // What speaks against writing the text.
    private IReadOnlyList<string> Objections(byte[] text, byte[] present, IReadOnlyDictionary<string, JsonElement> values)
    {
        ConfigurationFile file = Parse(text);
        if (text != present && ConfigurationCheck.Errors(file) is { Count: > 0 } errors)
        {
            return errors;
        }

        string[] overruled = [.. values
            .Where(pair => IsFromEnvironment(pair.Key) && !pair.Value.ToString().Equals(_environment[pair.Key], StringComparison.OrdinalIgnoreCase))
            .Select(pair => pair.Key)];
        if (overruled.Length > 0)
        {
            return
            [
                .. overruled.Select(key =>
                    $"{key} is given by the environment variable {ConfigurationFile.EnvironmentPrefix}{key.Replace(":", "__", StringComparison.Ordinal)}, which wins over the file; "
                    + "take it out of the environment of the service, start it anew, and change it here then"),
            ];
        }

        // The text was edited by our own hand: nothing but what was asked for may read differently.
        string[] strange = [.. ConfigurationDifference.Between(Parse(present), file).Select(change => change.Key).Where(key => !values.Keys.Contains(key, StringComparer.OrdinalIgnoreCase))];
        return strange.Length > 0 ? [$"{running.Path} would read differently at {string.Join(", ", strange)} as well; edit it by hand"] : [];
    }

    private static bool IsSame(object? held, JsonElement value) => held switch
    {
        null => value.ValueKind == JsonValueKind.Null,
        string text => value.ValueKind == JsonValueKind.String && value.GetString() == text,
        double number => value.ValueKind == JsonValueKind.Number && value.GetDouble().Equals(number),
        int number => value.ValueKind == JsonValueKind.Number && value.GetDouble().Equals(number),
        bool isOn => value.ValueKind == (isOn ? JsonValueKind.True : JsonValueKind.False),
        _ => false,
    };

    private static string Mark(byte[] text) => Convert.ToHexStringLower(SHA256.HashData(text))[..16];

    private ConfigurationFile Parse(byte[] text) => ConfigurationFile.Parse(running.Path!, text);

    [LoggerMessage(EventId = 1, Level = LogLevel.Information, Message = "{Path} was changed from the setup page: {Keys}; it holds at the next start")]
    private partial void LogChanged(string path, string[] keys);

    [LoggerMessage(EventId = 2, Level = LogLevel.Information, Message = "{Path} was set back to its earlier version from the setup page; it holds at the next start")]
    private partial void LogUndone(string path);
}
