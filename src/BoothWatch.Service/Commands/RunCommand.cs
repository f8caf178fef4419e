using System.CommandLine;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Commands;

/// <summary><c>run</c>: the booth itself, until it is stopped.</summary>
internal static class RunCommand
{
    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        var command = new Command("run", "Watches the booth: reads the sensors, sets the light, serves the page. This is what happens when no command is given.");
        command.SetAction((parsed, cancel) => RunAsync(parsed.GetValue(config), streams, cancel));
        return command;
    }

    public static async Task<int> RunAsync(string? configPath, CommandStreams streams, CancellationToken cancellationToken)
    {
        ConfigurationFile file = ConfigurationFile.Read(configPath);
        if (await ConfigCommand.ReportErrorsAsync(file, ConfigurationCheck.Errors(file), streams.Error))
        {
            return ExitCode.Wrong;
        }

        cancellationToken.ThrowIfCancellationRequested(); throw new NotImplementedException("the host comes with the assessment loop");
    }
}
