using BoothWatch.Service.Commands;

namespace BoothWatch.Service.Tests.Commands;

/// <summary>Runs a command line in this process.</summary>
internal static class CommandRun
{
    public static Task<CommandResult> With(string line) => With(line.Split(' '));

    public static async Task<CommandResult> With(string[] args, string standardInput = "", CancellationToken cancellationToken = default)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var input = new StringReader(standardInput);
        int exitCode = await CommandLine.RunAsync(args, new CommandStreams(input, output, error), cancellationToken);
        return new CommandResult(exitCode, output.ToString(), error.ToString());
    }
}

/// <summary>What a command left behind.</summary>
internal sealed record CommandResult(int ExitCode, string Out, string Error);
