using System.CommandLine;
using BoothWatch.Service.Advice;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Commands.Advise;

/// <summary><c>advise</c>: the physics and the verdict for an air that is given rather than measured.</summary>
internal static class AdviseCommand
{
    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        var command = new Command(
            "advise",
            "Says whether a coat would blush in a given air, without hardware: verdict, reasons, retarder level, margin. "
            + "Numbers take a unit; without one the stated default unit holds.");
        // Any number of values, so that a missing or doubled one is reported here, with its range and an example.
        var options = AdviseArguments.All.ToDictionary(
            argument => argument,
            argument => new Option<string[]>("--" + argument.Name)
            {
                Description = argument.Help,
                HelpName = argument.ValueName,
                Arity = ArgumentArity.ZeroOrMore,
            });
        foreach (Option<string[]> option in options.Values)
        {
            command.Add(option);
        }

        var table = new Option<string[]>("--table")
        {
            Description = "A CSV file of arguments, one question a row; the header names arguments without dashes; a blank cell takes what the command line gives, else the default. - reads standard input.",
            HelpName = "file",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var json = new Option<bool>("--json") { Description = "One JSON object an answer, one a line with --table (docs/advise.schema.json)." };
        command.Add(table);
        command.Add(json);
        command.SetAction((parsed, cancel) =>
        {
            var errors = new List<ArgumentError>();
            var given = new Dictionary<string, string>();
            foreach ((AdviseArgument argument, Option<string[]> option) in options)
            {
                if (Single(parsed, option, problem => argument.Error(null, problem), errors) is { } value)
                {
                    given[argument.Name] = value;
                }
            }

            string? tablePath = Single(parsed, table, problem => new ArgumentError("table", null, $"{problem}; give a CSV file or - for standard input, for example --table airs.csv"), errors);
            return RunAsync(parsed.GetValue(config), given, errors, tablePath, parsed.GetValue(json), streams, cancel);
        });
        return command;
    }

    private static string? Single(ParseResult parsed, Option<string[]> option, Func<string, ArgumentError> error, List<ArgumentError> errors)
    {
        if (parsed.GetResult(option) is not { Implicit: false } result)
        {
            return null;
        }

        if (result.Tokens.Count == 1 && result.IdentifierTokenCount == 1 && !string.IsNullOrWhiteSpace(result.Tokens[0].Value))
        {
            return result.Tokens[0].Value;
        }

        errors.Add(error(result.IdentifierTokenCount > 1 || result.Tokens.Count > 1 ? "it is given more than once" : "it has no value"));
        return null;
    }

    private static async Task<int> RunAsync(
        string? configPath,
        IReadOnlyDictionary<string, string> given,
        List<ArgumentError> errors,
        string? tablePath,
        bool json,
        CommandStreams streams,
        CancellationToken cancellationToken)
    {
        ConfigurationFile file = ConfigurationFile.Read(configPath);
        IReadOnlyList<string> configErrors = ConfigurationCheck.Errors(file, Adviser.Sections);
        if (await ConfigCommand.ReportErrorsAsync(file, configErrors, streams.Error))
        {
            return ExitCode.Wrong;
        }

        using Adviser adviser = Adviser.From(file);
        if (errors.Count > 0)
        {
            // What was given without a value is reported once; the other values are looked at as well.
            adviser.Read(given, out IReadOnlyList<ArgumentError> more);
            return await WrongAsync([.. errors, .. tablePath is null ? more.Where(error => error.Value is not null) : []], streams);
        }

        return tablePath is null
            ? await AnswerOneAsync(adviser, given, json, streams)
            : await new AdviseTable(adviser, given, json).RunAsync(tablePath, streams, cancellationToken);
    }

    private static async Task<int> AnswerOneAsync(Adviser adviser, IReadOnlyDictionary<string, string> given, bool json, CommandStreams streams)
    {
        AdviseAnswer? answer = adviser.Answer(given, out IReadOnlyList<ArgumentError> errors);
        if (answer is null)
        {
            return await WrongAsync(errors, streams);
        }

        await streams.Out.WriteLineAsync(json ? AdviseJson.Write(answer) : AdviseText.Write(answer, adviser.Unit));
        return answer.Film is null ? ExitCode.Failed : ExitCode.Good;
    }

    private static async Task<int> WrongAsync(IEnumerable<ArgumentError> errors, CommandStreams streams)
    {
        foreach (ArgumentError error in errors)
        {
            await streams.Error.WriteLineAsync(error.OnCommandLine);
        }

        await streams.Error.WriteLineAsync("Help: advise --help");
        return ExitCode.Wrong;
    }
}
