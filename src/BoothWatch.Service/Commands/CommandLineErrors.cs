using System.CommandLine;
using System.CommandLine.Parsing;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Commands;

/// <summary>Says what is wrong with a command line: which argument, and what to write instead.</summary>
internal static class CommandLineErrors
{
    public static IEnumerable<string> Explain(ParseResult parsed, string[] args)
    {
        Command command = parsed.CommandResult.Command;
        string[] unknown = [.. parsed.UnmatchedTokens];
        string[] errors = unknown.Length > 0
            ? [.. unknown.Where(token => !IsValueOfUnknown(token, unknown, args)).Select(token => Unknown(token, parsed))]
            : [.. parsed.Errors.Select(error => Other(error, command))];
        return [.. errors, $"Help: {FullName(parsed.CommandResult)} --help"];
    }

    // '--temprature 24' leaves two unknown tokens; only the first is the mistake.
    private static bool IsValueOfUnknown(string token, string[] unknown, string[] args)
    {
        int at = Array.IndexOf(args, token);
        return !IsOption(token) && at > 0 && IsOption(args[at - 1]) && unknown.Contains(args[at - 1]);
    }

    private static string Unknown(string token, ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        if (IsOption(token))
        {
            string name = token.Split('=', 2)[0];
            IEnumerable<string> options = command.Options.Append(parsed.RootCommandResult.Command.Options.First(o => o.Recursive && o.Name == "--config")).Select(option => option.Name).Distinct();
            return $"{name} is not an argument of {FullName(parsed.CommandResult)}; {NearestName.Hint(name, options)}";
        }

        return command.Subcommands.Count > 0
            ? $"'{token}' is not a command; {NearestName.Hint(token, command.Subcommands.Select(sub => sub.Name))}"
            : $"'{token}' is not expected here: every value of {FullName(parsed.CommandResult)} follows the name of its argument, for example {Example(command)}";
    }

    private static string Other(ParseError error, Command command) => error.SymbolResult switch
    {
        OptionResult { Option: var option } result => result.Tokens.Count > 1
            ? $"{option.Name} is given {result.Tokens.Count} times; give it once"
            : $"{option.Name} has no value; give one, for example {option.Name} config/boothwatch.json",
        _ when command.Subcommands.Count > 0 => $"{command.Name} needs to know what to do: {string.Join(", ", command.Subcommands.Select(sub => $"{command.Name} {sub.Name}"))}",
        _ => error.Message,
    };

    private static string Example(Command command) =>
        command.Name == "advise" ? "--temperature 24C --humidity 55%" : "--config config/boothwatch.json";

    private static bool IsOption(string token) => token.StartsWith('-') && token.Length > 1 && !char.IsAsciiDigit(token[1]) && token[1] != '.';

    private static string FullName(CommandResult result) =>
        result.Parent is CommandResult parent && parent.Parent is not null ? $"{FullName(parent)} {result.Command.Name}" : result.Command.Name;
}
