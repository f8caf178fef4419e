using System.CommandLine;

namespace BoothWatch.Service.Commands;

/// <summary><c>sensors</c>: asks every configured sensor once.</summary>
internal static class SensorsCommand
{
    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        var command = new Command("sensors", "Asks every configured sensor once and prints its reading, or why there is none and what to check. Exit code 0 when all answer, 1 when one does not.");
        command.SetAction((parsed, _) => Task.FromException<int>(new NotImplementedException($"{parsed.GetValue(config)} {streams}")));
        return command;
    }
}
