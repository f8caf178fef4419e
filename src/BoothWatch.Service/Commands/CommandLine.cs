using System.CommandLine;
using System.CommandLine.Help;
using BoothWatch.Service.Commands.Advise;
using BoothWatch.Service.Commands.Record;

namespace BoothWatch.Service.Commands;

/// <summary>The commands and how a command line becomes one of them.</summary>
public static class CommandLine
{
    // After Ctrl-C or a stop by the service manager: long enough for the last flush of the outputs.
    private static readonly TimeSpan StopTimeout = TimeSpan.FromSeconds(12);

    /// <summary>Runs a command line.</summary>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(string[] args, CommandStreams streams, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(streams);
        RootCommand root = Build(streams);
        ParseResult parsed = root.Parse(args, new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0 && parsed.Action is not HelpAction)
        {
            foreach (string error in CommandLineErrors.Explain(parsed, args))
            {
                await streams.Error.WriteLineAsync(error);
            }

            return ExitCode.Wrong;
        }

        try
        {
            return await parsed.InvokeAsync(
                new InvocationConfiguration
                {
                    Output = streams.Out,
                    Error = streams.Error,
                    EnableDefaultExceptionHandler = false,
                    ProcessTerminationTimeout = StopTimeout,
                },
                cancellationToken);
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Interrupted;
        }
        catch (IOException problem)
        {
            // Standard output on a full disk, a table that cannot be read to its end.
            await streams.Error.WriteLineAsync($"stopped before the end: {problem.Message}");
            return ExitCode.Failed;
        }
    }

    private static RootCommand Build(CommandStreams streams)
    {
        var config = new Option<string?>("--config")
        {
            Description = "Configuration file. Default: config/boothwatch.json below the current directory, else the one beside the program.",
            HelpName = "file",
            Recursive = true,
        };
        var root = new RootCommand(
            "Watches a spray booth and says whether a lacquer coat would blush: spray, slow down or wait. "
            + "It judges the finish only: it is no gas detector, and says nothing about fire or breathing.")
        {
            config,
            RunCommand.Build(config, streams),
            AdviseCommand.Build(config, streams),
            SensorsCommand.Build(config, streams),
            LampsCommand.Build(config, streams),
            ConfigCommand.Build(config, streams),
            RecordCommand.Build(config, streams),
            AccessCommand.Build(config, streams),
        };
        root.SetAction((parsed, cancel) => RunCommand.RunAsync(parsed.GetValue(config), streams, cancel));
        return root;
    }
}
