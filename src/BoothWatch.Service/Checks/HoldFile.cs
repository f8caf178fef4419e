using System.Text.Json;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service.Checks;

/// <summary>
/// The held sensors in a small file beside the journal, so that a sensor in a jar stays held even when the journal is damaged and set
/// aside, or cannot be read. Whoever deletes it, or the folder, frees no sensor whose check the journal knows.
/// </summary>
/// <param name="location">Where the journal lies.</param>
internal sealed class HoldFile(JournalLocation location)
{
    /// <summary>Full path of the file.</summary>
    public string FilePath { get; } = Path.ChangeExtension(location.Path, ".holds.json");

    /// <summary>The same file of the time when any sensor was emulated; null for that itself.</summary>
    public HoldFile? OfDemo => location.IsDemo ? null : new HoldFile(location with
    {
        Path = Path.Combine(Path.GetDirectoryName(location.Path)!, JournalLocation.DemoFileName),
        IsDemo = true,
    });

    /// <summary>The held sensors; empty without a file; null when there is a file that cannot be read, so that nobody knows.</summary>
    public IReadOnlyList<HoldLine>? Read()
    {
        try
        {
            HoldLine?[]? lines = File.Exists(FilePath) ? JsonSerializer.Deserialize<HoldLine?[]>(File.ReadAllBytes(FilePath), JobsJson.Options) : [];
            return lines is null || lines.Any(line => line?.Sensor is null) ? null : [.. lines.OfType<HoldLine>()];
        }
        catch (Exception unreadable) when (unreadable is JsonException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Writes the file anew and forces it to the disk.</summary>
    /// <exception cref="IOException">The disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    public void Write(IReadOnlyList<HoldLine> lines)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(FilePath)!);
        WholeFile.Replace(FilePath, stream => JsonSerializer.Serialize(stream, lines, JobsJson.Options));
    }
}
