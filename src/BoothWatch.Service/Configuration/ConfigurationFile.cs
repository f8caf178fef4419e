using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Extensions.Configuration.Json;

namespace BoothWatch.Service.Configuration;

/// <summary>The one configuration file: where it is, and reading it.</summary>
/// <param name="Path">Full path of the file that was read; null when there is none and the defaults hold.</param>
/// <param name="Configuration">What it says, with the environment on top.</param>
/// <param name="Errors">Why it could not be read; empty when it was.</param>
public sealed partial record ConfigurationFile(string? Path, IConfigurationRoot Configuration, IReadOnlyList<string> Errors)
{
    /// <summary>Where the file lies below the current directory or the executable.</summary>
    public const string DefaultRelativePath = "config/boothwatch.json";

    /// <summary>Environment variables with this prefix override the file: <c>BOOTHWATCH_light__greenPin=17</c>.</summary>
    public const string EnvironmentPrefix = "BOOTHWATCH_";

    /// <summary>The materials: the folder <c>materials</c> beside the file, else the one that comes with the program.</summary>
    public string MaterialsFolder => Folder("materials");

    /// <summary>The schedules: the folder <c>schedules</c> beside the file, else the one that comes with the program.</summary>
    public string SchedulesFolder => Folder("schedules");

    /// <summary>Where the configuration was read from, in words.</summary>
    public string Origin => Path ?? "no file: built-in defaults";

    /// <summary>Finds and reads the file.</summary>
    /// <param name="asked">The file asked for; null: <c>config/boothwatch.json</c> below the current directory, else beside the executable.</param>
    public static ConfigurationFile Read(string? asked)
    {
        if (asked is not null && !File.Exists(asked))
        {
            return new ConfigurationFile(
                System.IO.Path.GetFullPath(asked),
                new ConfigurationBuilder().Build(),
                [Directory.Exists(asked)
                    ? $"--config is '{asked}': that is a folder; give the file in it, for example --config {System.IO.Path.Combine(asked, System.IO.Path.GetFileName(DefaultRelativePath))}"
                    : $"--config is '{asked}': there is no such file; give the path of a configuration file, for example --config {DefaultRelativePath}"]);
        }

        string? path = Locate(asked);
        return Of(path, () => path is null ? null : File.ReadAllBytes(path));
    }

    /// <summary>Reads a text as if it stood in a file: how a change is checked before it is written.</summary>
    /// <param name="path">Full path of the file.</param>
    /// <param name="text">Its text, UTF-8.</param>
    internal static ConfigurationFile Parse(string path, byte[] text) => Of(path, () => text);

    private static ConfigurationFile Of(string? path, Func<byte[]?> text)
    {
        try
        {
            return new ConfigurationFile(path, Build(text()), []);
        }
        catch (Exception problem) when (problem is JsonException or InvalidDataException or FormatException or IOException or UnauthorizedAccessException)
        {
            return new ConfigurationFile(path, new ConfigurationBuilder().Build(), [Explain(path!, problem)]);
        }
    }

    private string Folder(string name)
    {
        string beside = System.IO.Path.Combine(System.IO.Path.GetDirectoryName(Path) ?? "", name);
        return Path is not null && Directory.Exists(beside) ? beside : System.IO.Path.Combine(AppContext.BaseDirectory, "config", name);
    }

    private static string? Locate(string? asked)
    {
        string[] places = asked is not null
            ? [asked]
            : [
                System.IO.Path.Combine(Environment.CurrentDirectory, DefaultRelativePath),
                System.IO.Path.Combine(AppContext.BaseDirectory, DefaultRelativePath),
            ];
        return places.Where(File.Exists).Select(System.IO.Path.GetFullPath).FirstOrDefault();
    }

    private static IConfigurationRoot Build(byte[]? text)
    {
        var builder = new ConfigurationBuilder();
        if (text is not null)
        {
            // From memory rather than through a file provider: those skip dot-folders and watch for changes.
            builder.Add(new JsonStreamConfigurationSource { Stream = new MemoryStream(text) });
        }

        return builder.AddEnvironmentVariables(EnvironmentPrefix).Build();
    }

    private static string Explain(string path, Exception problem)
    {
        for (Exception? inner = problem; inner is not null; inner = inner.InnerException)
        {
            if (inner is JsonException { LineNumber: { } line } json)
            {
                return $"{path}, line {line + 1}: not valid JSON (comments and trailing commas are allowed): {json.Message}";
            }
        }

        // The reader of the JSON says only this, in a text that quotes the key.
        return problem is FormatException && QuotedKey().Match(problem.Message) is { Success: true } twice
            ? $"{path}: {twice.Groups[1].Value} is given twice; keep one of the two"
            : $"{path}: {problem.Message}";
    }

    [GeneratedRegex("duplicate key '([^']+)'", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex QuotedKey();
}
