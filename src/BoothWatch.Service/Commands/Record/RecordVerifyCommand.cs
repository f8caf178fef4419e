using System.CommandLine;
using System.Text.Json;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Records;

namespace BoothWatch.Service.Commands.Record;

/// <summary><c>record verify</c>: whether the data in a file is as it was written out. 0 it matches, 1 it was altered, 2 wrong arguments.</summary>
internal static class RecordVerifyCommand
{
    private const int HashDigits = 64;

    private sealed record Asked(string? Config, string File, string? Metadata, string? Sha256, bool Journal);

    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        Argument<string?> file = RecordCommand.Lone("file", "A record as json, csv or pdf.");
        Option<string?> metadata = new("--metadata") { Description = $"Metadata of a csv. Default: the file beside it with {CsvMetadata.Suffix} at its end.", HelpName = "file" };
        Option<string?> sha256 = new("--sha256") { Description = "The 64 digits as you kept them elsewhere; they are compared too.", HelpName = "digits" };
        Option<bool> journal = new("--journal") { Description = "Compares with the journal of this BoothWatch too." };
        Command command = new("verify", "Reckons the SHA-256 of the data in a file anew and compares. Exit code 0: it matches; 1: it was altered; 2: wrong arguments.")
        {
            file, metadata, sha256, journal,
        };
        command.SetAction(async (parsed, _) =>
        {
            if (parsed.GetValue(file) is not { Length: > 0 } path)
            {
                await streams.Error.WriteLineAsync("the file is missing; give a record, for example record verify record.json");
                return ExitCode.Wrong;
            }

            string? kept = parsed.GetValue(sha256)?.Trim().ToLowerInvariant().Replace(" ", "", StringComparison.Ordinal);
            if (kept is not null && (kept.Length != HashDigits || !kept.All(char.IsAsciiHexDigitLower)))
            {
                await streams.Error.WriteLineAsync($"--sha256 is '{kept}'; give the {HashDigits} hexadecimal digits that stand in the record");
                return ExitCode.Wrong;
            }

            return await RunAsync(new Asked(parsed.GetValue(config), path, parsed.GetValue(metadata), kept, parsed.GetValue(journal)), streams);
        });
        return command;
    }

    private static async Task<int> RunAsync(Asked asked, CommandStreams streams)
    {
        RecordCheck check;
        try
        {
            check = await RecordFile.CheckAsync(asked.File, asked.Metadata);
        }
        catch (Exception problem) when (problem is FileNotFoundException or DirectoryNotFoundException or UnauthorizedAccessException)
        {
            await streams.Error.WriteLineAsync($"{problem.Message} Give a record as json, as pdf, or as csv with its metadata beside it (or --metadata)");
            return ExitCode.Wrong;
        }

        if (!check.Matches)
        {
            await streams.Out.WriteLineAsync($"ALTERED: {asked.File}: {check.Finding}");
            return ExitCode.Failed;
        }

        if (asked.Sha256 is { } kept && kept != check.Sha256)
        {
            await streams.Out.WriteLineAsync($"ALTERED: {asked.File}: it agrees with itself, but its SHA-256 is {check.Sha256} and yours is {kept}");
            return ExitCode.Failed;
        }

        if (asked.Journal && await AgainstJournal(asked, check, streams) is { } failed)
        {
            return failed;
        }

        await streams.Out.WriteLineAsync($"matches: {asked.File}: {check.Finding}");
        await streams.Out.WriteLineAsync($"SHA-256 {check.Sha256}");
        await streams.Out.WriteLineAsync(asked.Sha256 is not null ? "It is the one that you kept."
            : "Compare it with a copy kept elsewhere (--sha256): whoever changes the data can also reckon the digits anew.");
        return ExitCode.Good;
    }

    private static async Task<int?> AgainstJournal(Asked asked, RecordCheck check, CommandStreams streams)
    {
        ConfigurationFile file = ConfigurationFile.Read(asked.Config);
        if (await ConfigCommand.ReportErrorsAsync(file, ConfigurationCheck.Errors(file), streams.Error))
        {
            return ExitCode.Wrong;
        }

        await using ServiceProvider services = RecordServices.Build(file);
        string journal = services.GetRequiredService<JournalLocation>().Path;
        JsonElement job = check.Document!.Value.GetProperty("record").GetProperty("job");
        try
        {
            RecordDocument? present = services.GetRequiredService<RecordMaker>().Of(job.GetProperty("id").GetInt64());
            if (present?.Sha256 == check.Sha256)
            {
                await streams.Out.WriteLineAsync($"The journal {journal} gives the same data.");
                return null;
            }

            await streams.Out.WriteLineAsync(present is null
                ? $"NOT THE SAME: the journal {journal} has no such job"
                : $"NOT THE SAME: the journal {journal} gives SHA-256 {present.Sha256} now. A job that was still running, a later correction, other sensors or another name of the shop change it too");
            return ExitCode.Failed;
        }
        catch (JournalException trouble)
        {
            await streams.Error.WriteLineAsync(trouble.Message);
            return ExitCode.Failed;
        }
    }
}
