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
internal sealed partial class ConfigurationEditor(ConfigurationFile running, ILogger<ConfigurationEditor> logger)
{
    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly string Beside = Path.Combine(AppContext.BaseDirectory, "config") + Path.DirectorySeparatorChar;

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
        return _versions.Previous(text) is { } previous ? (previous.Time, Differences(Parse(text), Parse(previous.Text))) : null;
    }

    /// <summary>Changes some settings.</summary>
    /// <param name="version">Mark of the text that the person saw.</param>
    /// <param name="values">Full keys and their values: texts, numbers or null.</param>
    /// <exception cref="IOException">The disk refuses; the file is as it was.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there; the file is as it was.</exception>
    public EditOutcome Change(string version, IReadOnlyDictionary<string, JsonElement> values) => Edit(version, (versions, present) =>
    {
        try
        {
            IReadOnlyDictionary<string, object?> held = SettingValues.Of(Parse(present).Configuration);
            byte[] text = present;
            foreach ((string key, JsonElement value) in values.Where(pair => !IsSame(held[pair.Key], pair.Value)))
            {
                text = JsonTextEdit.Set(text, key, JsonSerializer.Serialize(value, Readable));
            }

            return text == present ? EditOutcome.Nothing : Write(versions, text, present, values.Keys);
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

    private EditOutcome Write(ConfigurationVersions versions, byte[] text, byte[] present, IEnumerable<string> asked)
    {
        ConfigurationFile file = Parse(text);
        IReadOnlyList<string> errors = ConfigurationCheck.Errors(file);
        if (errors.Count > 0)
        {
            return EditOutcome.Wrong(errors);
        }

        // The text was edited by our own hand: nothing but what was asked for may read differently.
        string[] changed = [.. Differing(Parse(present), file)];
        string[] strange = [.. changed.Where(key => !asked.Contains(key, StringComparer.OrdinalIgnoreCase))];
        if (strange.Length > 0)
        {
            return EditOutcome.Wrong([$"{running.Path} would read differently at {string.Join(", ", strange)} as well; edit it by hand"]);
        }

        versions.Replace(text);
        LogChanged(running.Path!, changed);
        return EditOutcome.Written;
    }

    private static List<string> Differences(ConfigurationFile from, ConfigurationFile to)
    {
        List<string> changes = to.Errors.Count > 0 ? [.. to.Errors] : [];
        foreach (string key in Differing(from, to))
        {
            changes.Add($"{key} from {Show(from, key)} to {Show(to, key)}");
        }

        return changes.Count > 0 ? changes : ["comments or spacing only"];

        static string Show(ConfigurationFile file, string key) => file.Configuration.GetSection(key).Value is { } value ? EffectiveConfiguration.Show(key, value) : "(not set)";
    }

    // Only values: a section has none of its own.
    private static IEnumerable<string> Differing(ConfigurationFile one, ConfigurationFile other)
    {
        Dictionary<string, string?> before = Flat(one);
        Dictionary<string, string?> after = Flat(other);
        return before.Keys.Union(after.Keys, StringComparer.OrdinalIgnoreCase)
            .Where(key => !string.Equals(before.GetValueOrDefault(key), after.GetValueOrDefault(key), StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

        static Dictionary<string, string?> Flat(ConfigurationFile file) => file.Configuration.AsEnumerable()
            .Where(pair => pair.Value is not null)
            .ToDictionary(StringComparer.OrdinalIgnoreCase);
    }

    private static bool IsSame(object? held, JsonElement value) => held switch
    {
        null => value.ValueKind == JsonValueKind.Null,
        string text => value.ValueKind == JsonValueKind.String && value.GetString() == text,
        double number => value.ValueKind == JsonValueKind.Number && value.GetDouble().Equals(number),
        _ => false,
    };

    private static string Mark(byte[] text) => Convert.ToHexStringLower(SHA256.HashData(text))[..16];

    private ConfigurationFile Parse(byte[] text) => ConfigurationFile.Parse(running.Path!, text);

    [LoggerMessage(EventId = 1, Level = LogLevel.Information, Message = "{Path} was changed from the setup page: {Keys}; it holds at the next start")]
    private partial void LogChanged(string path, string[] keys);

    [LoggerMessage(EventId = 2, Level = LogLevel.Information, Message = "{Path} was set back to its earlier version from the setup page; it holds at the next start")]
    private partial void LogUndone(string path);
}
