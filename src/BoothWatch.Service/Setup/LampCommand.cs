using System.Text.RegularExpressions;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Setup;

/// <summary>
/// The lines that test the lamps, to be copied into a shell: with this program, this file and this folder, and with what the environment of
/// the service says, wherever they are typed in.
/// </summary>
/// <param name="running">The configuration that the program runs with.</param>
/// <param name="location">Where the journal lies.</param>
/// <param name="environment">Variables of the service.</param>
internal sealed partial class LampCommand(ConfigurationFile running, JournalLocation location, IReadOnlyDictionary<string, string> environment)
{
    private const string FolderVariable = $"{ConfigurationFile.EnvironmentPrefix}{SeriesOptions.Section}__folder";

    private static readonly string[] Sections = [LightOptions.Section, SensorsOptions.Section, SeriesOptions.Section, PageOptions.Section];

    /// <summary>The lines, in order; each is one command.</summary>
    /// <param name="isUnit">True when systemd runs the service.</param>
    public IReadOnlyList<string> Lines(bool isUnit)
    {
        string program = Program();
        string config = running.Path is { } path ? $" --config {Quoted(path)}" : "";
        string variables = string.Join(' ', Variables());
        string lamps = $"env {variables} {program} lamps --seconds 10{config}";
        return isUnit
            ? ["sudo systemctl stop boothwatch", $"sudo {lamps}", "sudo systemctl start boothwatch"]
            : [lamps, $"env {variables} {program} run{config}"];
    }

    /// <summary>What to do before the lines.</summary>
    public static string First(bool isUnit) => isUnit
        ? "Open a shell on the machine that runs BoothWatch, and stand where you see the lamps."
        : "Stop BoothWatch with Ctrl-C where it runs, and stand where you see the lamps.";

    // The folder always: that of another user would be another one. Of the rest what the command reads.
    private IEnumerable<string> Variables() => environment
        .Where(variable => Sections.Any(section => variable.Key.StartsWith($"{ConfigurationFile.EnvironmentPrefix}{section}__", StringComparison.OrdinalIgnoreCase)))
        .Where(variable => !variable.Key.Equals(FolderVariable, StringComparison.OrdinalIgnoreCase))
        .Append(new(FolderVariable, Path.GetDirectoryName(location.Path)!))
        .OrderBy(variable => variable.Key, StringComparer.Ordinal)
        .Select(variable => $"{variable.Key}={Quoted(variable.Value)}");

    private static string Program() => Environment.ProcessPath is { } path && !Path.GetFileNameWithoutExtension(path).Equals("dotnet", StringComparison.OrdinalIgnoreCase)
        ? Quoted(path)
        : $"dotnet {Quoted(Path.Combine(AppContext.BaseDirectory, $"{typeof(LampCommand).Assembly.GetName().Name}.dll"))}";

    /// <summary>A word of a command line that a shell takes as it is.</summary>
    internal static string Quoted(string text) => Plain().IsMatch(text) ? text : $"'{text.Replace("'", "'\\''", StringComparison.Ordinal)}'";

    [GeneratedRegex("^[A-Za-z0-9_./:@%+=,-]+$")]
    private static partial Regex Plain();
}
