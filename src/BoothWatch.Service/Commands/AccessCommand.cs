using System.CommandLine;
using System.Text;
using BoothWatch.Service.Access;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Commands;

/// <summary><c>access set-secret</c>: sets the shared secret with which other machines read and everybody makes changes.</summary>
internal static class AccessCommand
{
    private const int GeneratedGroups = 5;

    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        var file = new Option<string?>("--file") { Description = "Read the secret from the first line of this file, or of standard input for -. Without it the terminal asks, and shows nothing of what is typed.", HelpName = "file" };
        var generate = new Option<bool>("--generate") { Description = "Make a secret of 100 random bits and print it once." };
        var set = new Command("set-secret", "Sets the shared secret, kept as a slow salted hash beside the journal. Run it as the user that runs BoothWatch. It holds at once and ends every session. Exit code 2 when the secret is too weak.")
        {
            file,
            generate,
        };
        set.SetAction((parsed, cancel) => SetAsync(parsed.GetValue(config), parsed.GetValue(file), parsed.GetValue(generate), streams, cancel));
        return new Command("access", "Looks after who may read and change.") { set };
    }

    private static async Task<int> SetAsync(string? configPath, string? path, bool generate, CommandStreams streams, CancellationToken cancellationToken)
    {
        ConfigurationFile file = ConfigurationFile.Read(configPath);
        if (await ConfigCommand.ReportErrorsAsync(file, file.Errors, streams.Error))
        {
            return ExitCode.Wrong;
        }

        var booth = (BoothOptions)ConfigurationSections.Bind(file.Configuration, typeof(BoothOptions));
        AccessFolder folder = AccessFolder.Of(file.Configuration);
        try
        {
            string? secret = generate ? StartCode.Make(GeneratedGroups) : await ReadAsync(path, streams, cancellationToken);
            if ((secret is null ? "no secret was given, or the two are not the same; give it again" : SecretStrength.Problem(secret, booth.Shop, booth.Name)) is { } problem)
            {
                await streams.Error.WriteLineAsync(problem);
                return ExitCode.Wrong;
            }

            using SharedSecret shared = new(folder);
            shared.Set(SecretHash.Of(secret!));
            if (generate)
            {
                await streams.Out.WriteLineAsync(secret);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            await streams.Error.WriteLineAsync($"the secret cannot be read or kept: {problem.Message}");
            return ExitCode.Failed;
        }

        await streams.Error.WriteLineAsync($"the secret is set ({folder.SecretFile}); every session has ended");
        string url = ((PageOptions)ConfigurationSections.Bind(file.Configuration, typeof(PageOptions))).Url;
        await streams.Error.WriteLineAsync($"it holds for the BoothWatch that keeps its readings there and listens at {url}");
        return ExitCode.Good;
    }

    private static async Task<string?> ReadAsync(string? path, CommandStreams streams, CancellationToken cancellationToken)
    {
        if (path is not null and not "-")
        {
            using StreamReader reader = new(path);
            return await reader.ReadLineAsync(cancellationToken);
        }

        bool isTerminal = path is null && !Console.IsInputRedirected && ReferenceEquals(streams.In, Console.In);
        if (!isTerminal)
        {
            return await streams.In.ReadLineAsync(cancellationToken);
        }

        string first = await TypeAsync("Secret: ", streams.Error);
        return first.Length > 0 && first == await TypeAsync("Once more: ", streams.Error) ? first : null;
    }

    private static async Task<string> TypeAsync(string prompt, TextWriter writer)
    {
        // Asked for what it does besides: from now on the terminal shows nothing of what is typed, however early.
        _ = Console.KeyAvailable;
        await writer.WriteAsync(prompt);
        await writer.FlushAsync();
        StringBuilder typed = new();
        while (Console.ReadKey(intercept: true) is { Key: not ConsoleKey.Enter } key)
        {
            if (key.Key == ConsoleKey.Backspace)
            {
                typed.Length = Math.Max(0, typed.Length - 1);
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }

        await writer.WriteLineAsync();
        return typed.ToString();
    }
}
