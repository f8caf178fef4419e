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

        await using WebApplication booth = BoothHost.Build(file);
        await booth.RunAsync(cancellationToken);

        // A background part that dies stops the host, and the host would still end with exit code 0.
        bool anyDied = booth.Services.GetServices<IHostedService>().OfType<BackgroundService>().Any(part => part.ExecuteTask is { IsFaulted: true });
        return anyDied ? ExitCode.Failed : ExitCode.Good;
    }
}
