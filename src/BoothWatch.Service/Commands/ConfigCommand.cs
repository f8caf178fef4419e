using System.CommandLine;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Commands;

/// <summary><c>config check</c>: everything that is wrong with the configuration, at once.</summary>
internal static class ConfigCommand
{
    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        var check = new Command("check", "Checks the configuration and prints every error with its key, its value and the fix. Exit code 0 when it is good, 2 when not.");
        check.SetAction((parsed, _) => CheckAsync(parsed.GetValue(config), streams));
        return new Command("config", "Looks at the configuration.") { check };
    }

    public static async Task<int> CheckAsync(string? path, CommandStreams streams)
    {
        ConfigurationFile file = ConfigurationFile.Read(path);
        if (await ReportErrorsAsync(file, ConfigurationCheck.Errors(file), streams.Error))
        {
            return ExitCode.Wrong;
        }

        await streams.Out.WriteLineAsync($"configuration is good ({file.Origin})");
        return ExitCode.Good;
    }

    /// <summary>Prints errors, if there are any, and says whether there were.</summary>
    public static async Task<bool> ReportErrorsAsync(ConfigurationFile file, IReadOnlyList<string> errors, TextWriter writer)
    {
        foreach (string error in errors)
        {
            await writer.WriteLineAsync(error);
        }

        if (errors.Count > 0)
        {
            string count = errors.Count == 1 ? "1 error" : $"{errors.Count} errors";
            await writer.WriteLineAsync($"configuration is not good: {count} ({file.Origin})");
        }

        return errors.Count > 0;
    }
}
