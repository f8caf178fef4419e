using System.Text.Json;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>
/// The last trial of each output of the light, beside the journal in <c>lamps.json</c>. The command <c>lamps</c> writes it while the service
/// is stopped; the service reads it afterwards, so that a person need only say what was seen.
/// </summary>
/// <param name="folder">The folder of the journal.</param>
internal sealed class LampTrials(string folder)
{
    private const UnixFileMode ForTheService = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.OtherRead;

    private static readonly JsonSerializerOptions Readable = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Full path of the file.</summary>
    public string FilePath { get; } = Path.Combine(folder, "lamps.json");

    /// <summary>The last trial of an output as it is wired now; null when there was none with this wiring, or the file cannot be read.</summary>
    /// <param name="id">green, yellow, red or buzzer.</param>
    /// <param name="wiring">The wiring, see <see cref="LightOptions.WiringOf"/>.</param>
    public LampTrial? Of(string id, string wiring) => Read().GetValueOrDefault(id) is { } trial && trial.Wiring == wiring ? trial : null;

    /// <summary>Keeps trials in the place of those of the same outputs. Whoever runs the command, root as well, the service can read them.</summary>
    /// <exception cref="IOException">The disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    public void Keep(IReadOnlyDictionary<string, LampTrial> trials)
    {
        Dictionary<string, LampTrial> all = Read();
        foreach ((string id, LampTrial trial) in trials)
        {
            all[id] = trial;
        }

        WholeFile.Replace(FilePath, stream => JsonSerializer.Serialize(stream, all, Readable), ForTheService);
    }

    // A file that cannot be read tells of no trial.
    private Dictionary<string, LampTrial> Read()
    {
        try
        {
            return File.Exists(FilePath) ? JsonSerializer.Deserialize<Dictionary<string, LampTrial>>(File.ReadAllBytes(FilePath), Readable) ?? [] : [];
        }
        catch (Exception unreadable) when (unreadable is JsonException or IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
