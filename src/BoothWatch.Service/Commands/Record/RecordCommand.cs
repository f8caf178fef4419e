using System.CommandLine;
using System.Globalization;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Records;
using BoothWatch.Service.Records.Pdf;

namespace BoothWatch.Service.Commands.Record;

/// <summary><c>record</c>: shows, writes out and verifies the environment record of a job.</summary>
internal static class RecordCommand
{
    private static readonly string[] Formats = ["pdf", "csv", "json"];

    public static Command Build(Option<string?> config, CommandStreams streams) => new("record", "The environment record of a job: shows it, writes it to a file, verifies a file.")
    {
        Show(config, streams),
        Export(config, streams),
        RecordVerifyCommand.Build(config, streams),
    };

    /// <summary>An argument that may be missing, so that its absence is reported with an example.</summary>
    internal static Argument<string?> Lone(string name, string description) => new(name) { Description = description, Arity = ArgumentArity.ZeroOrOne };

    private static Command Show(Option<string?> config, CommandStreams streams)
    {
        Argument<string?> job = Lone("job", "Number of the job, as on the page of jobs; or a record file, whose data is taken when it verifies.");
        Command command = new("show", "Prints the record of a job.") { job };
        command.SetAction((parsed, _) => WithRecord(parsed.GetValue(config), parsed.GetValue(job), "record show 3", streams, async (document, services) =>
        {
            await streams.Out.WriteAsync(services.GetRequiredService<RecordTable>().Write(document));
            return ExitCode.Good;
        }));
        return command;
    }

    private static Command Export(Option<string?> config, CommandStreams streams)
    {
        Argument<string?> job = Lone("job", "Number of the job, as on the page of jobs; or a record file, whose data is taken when it verifies.");
        Option<string?> format = new("--format") { Description = "pdf, csv (with its metadata file beside it) or json. Default: by the ending of --out.", HelpName = "format" };
        Option<string?> output = new("--out") { Description = "File to write; one that is there is replaced.", HelpName = "file" };
        Option<string?> paper = new("--paper") { Description = "A4 or Letter, for pdf. Default: record:paper.", HelpName = "paper" };
        Command command = new("export", "Writes the record of a job to a file.") { job, format, output, paper };
        command.SetAction(async (parsed, _) =>
        {
            string? path = parsed.GetValue(output);
            string kind = (parsed.GetValue(format) ?? Path.GetExtension(path ?? "").TrimStart('.')).ToLowerInvariant();
            string? problem = string.IsNullOrWhiteSpace(path) ? "--out is missing; give the file to write, for example --out record.pdf"
                : !Formats.Contains(kind) ? $"--format is '{kind}'; give pdf, csv or json, for example --format pdf"
                : parsed.GetValue(paper) is { } name && RecordPaper.Find(name) is null ? $"--paper is '{name}'; give A4 or Letter, for example --paper A4"
                : null;
            if (problem is not null)
            {
                await streams.Error.WriteLineAsync(problem);
                return ExitCode.Wrong;
            }

            return await WithRecord(parsed.GetValue(config), parsed.GetValue(job), "record export 3 --out record.pdf", streams, (document, services) =>
                Write(document, services.GetRequiredService<RecordPdf>(), kind, path!, parsed.GetValue(paper), streams));
        });
        return command;
    }

    private static async Task<int> Write(RecordDocument document, RecordPdf pdf, string kind, string path, string? paper, CommandStreams streams)
    {
        (string Path, byte[] Bytes)[] files = kind switch
        {
            "pdf" => [(path, pdf.Write(document, paper))],
            "csv" => [(path, RecordCsv.Write(document)), (path + CsvMetadata.Suffix, CsvMetadata.Write(document, Uri.EscapeDataString(Path.GetFileName(path))))],
            _ => [(path, document.Json())],
        };
        try
        {
            foreach ((string file, byte[] bytes) in files)
            {
                await File.WriteAllBytesAsync(file, bytes);
                await streams.Out.WriteLineAsync($"written: {file}");
            }
        }
        catch (Exception problem) when (problem is DirectoryNotFoundException or UnauthorizedAccessException)
        {
            await streams.Error.WriteLineAsync($"--out is '{path}': {problem.Message} Give a file in a folder that is there and may be written to");
            return ExitCode.Wrong;
        }

        await streams.Out.WriteLineAsync($"SHA-256 of the data: {document.Sha256}");
        await streams.Out.WriteLineAsync("Keep it elsewhere too: only against such a copy does it prove that nothing was changed later.");
        return ExitCode.Good;
    }

    private static async Task<int> WithRecord(
        string? configPath, string? job, string example, CommandStreams streams, Func<RecordDocument, IServiceProvider, Task<int>> work)
    {
        bool isNumber = long.TryParse(job, NumberStyles.None, CultureInfo.InvariantCulture, out long id) && id >= 1;
        bool isFile = !isNumber && File.Exists(job);
        if (!isNumber && !isFile)
        {
            await streams.Error.WriteLineAsync($"the job is {(job is null ? "missing" : $"'{job}'")}; give its number as on the page of jobs, or a record file, for example {example}");
            return ExitCode.Wrong;
        }

        ConfigurationFile file = ConfigurationFile.Read(configPath);
        if (await ConfigCommand.ReportErrorsAsync(file, ConfigurationCheck.Errors(file), streams.Error))
        {
            return ExitCode.Wrong;
        }

        await using ServiceProvider services = RecordServices.Build(file);
        try
        {
            if (isFile)
            {
                RecordCheck check = await RecordFile.CheckAsync(job!);
                if (check.Matches)
                {
                    return await work(RecordDocument.Read(check.Document!.Value), services);
                }

                await streams.Error.WriteLineAsync($"ALTERED: {job}: {check.Finding}; nothing is written from it");
                return ExitCode.Failed;
            }

            if (services.GetRequiredService<RecordMaker>().Of(id) is { } document)
            {
                return await work(document, services);
            }
        }
        catch (JournalException trouble)
        {
            await streams.Error.WriteLineAsync(trouble.Message);
            return ExitCode.Failed;
        }
        catch (FileNotFoundException problem)
        {
            await streams.Error.WriteLineAsync($"{problem.Message} A table needs its metadata beside it");
            return ExitCode.Wrong;
        }

        await streams.Error.WriteLineAsync($"job {id} is not in {services.GetRequiredService<JournalLocation>().Path}; give the number of one on the page of jobs");
        return ExitCode.Wrong;
    }
}
