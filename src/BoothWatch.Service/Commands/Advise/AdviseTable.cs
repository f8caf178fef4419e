using System.Globalization;
using System.Threading.Channels;
using BoothWatch.Service.Advice;
using BoothWatch.Service.Configuration;
using CsvHelper.Configuration;
using CsvHelper;

namespace BoothWatch.Service.Commands.Advise;

/// <summary>Answers a CSV table row by row, in order, each answer as soon as it and all before it are done.</summary>
internal sealed class AdviseTable(Adviser adviser, IReadOnlyDictionary<string, string> commandLine, bool json)
{
    private const int LongestQuote = 200;

    private sealed record Row(int Number, int Line, IReadOnlyList<string> Cells, string? Problem);

    private sealed record Outcome(string Text, bool Failed);

    /// <summary>Runs the table; <c>-</c> reads standard input.</summary>
    public async Task<int> RunAsync(string path, CommandStreams streams, CancellationToken cancellationToken)
    {
        if (path == "-")
        {
            return await RunAsync(streams.In, streams, cancellationToken);
        }

        try
        {
            using StreamReader reader = File.OpenText(path);
            return await RunAsync(reader, streams, cancellationToken);
        }
        catch (Exception problem) when (problem is FileNotFoundException or DirectoryNotFoundException or UnauthorizedAccessException)
        {
            string why = problem is UnauthorizedAccessException ? "it may not be read" : "there is no such file";
            await streams.Error.WriteLineAsync($"--table is '{path}': {why}; give a CSV file or - for standard input, for example --table airs.csv");
            return ExitCode.Wrong;
        }
    }

    private async Task<int> RunAsync(TextReader reader, CommandStreams streams, CancellationToken cancellationToken)
    {
        string? badData = null;
        using var parser = new CsvParser(reader, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            AllowComments = true,
            TrimOptions = TrimOptions.Trim,
            BadDataFound = found => badData = $"the quotes are not closed or not doubled in: {OnOneLine(found.RawRecord)}",
        }, leaveOpen: true);

        if (!await parser.ReadAsync())
        {
            await streams.Error.WriteLineAsync("--table: the table is empty; its first line names the columns, for example temperature,humidity,coat");
            return ExitCode.Wrong;
        }

        string[] columns = [.. parser.Record!.Select(name => name.Trim().TrimStart('-').ToLowerInvariant())];
        string[] headerErrors = [.. HeaderErrors(columns)];
        if (headerErrors.Length > 0)
        {
            foreach (string error in headerErrors)
            {
                await streams.Error.WriteLineAsync(error);
            }

            return ExitCode.Wrong;
        }

        if (!json)
        {
            await streams.Out.WriteLineAsync(AdviseText.TableHeader(adviser.Unit));
        }

        // Rows are answered on all cores; the channel keeps their order and how many are under way.
        var answers = Channel.CreateBounded<Task<Outcome>>(Environment.ProcessorCount);
        Task reading = Task.Run(
            async () =>
            {
                try
                {
                    for (int number = 1; await parser.ReadAsync(); number++)
                    {
                        var row = new Row(number, parser.RawRow, parser.Record!, badData ?? WrongCount(parser.Record!, columns));
                        badData = null;
                        await answers.Writer.WriteAsync(Task.Run(() => Answer(row, columns), cancellationToken), cancellationToken);
                    }

                    answers.Writer.Complete();
                }
                catch (Exception problem)
                {
                    answers.Writer.Complete(problem);
                    throw;
                }
            },
            cancellationToken);

        bool anyFailed = false;
        await foreach (Task<Outcome> answer in answers.Reader.ReadAllAsync(cancellationToken))
        {
            Outcome outcome = await answer;
            anyFailed |= outcome.Failed;
            await streams.Out.WriteLineAsync(outcome.Text);
            await streams.Out.FlushAsync(cancellationToken);
        }

        await reading;
        if (!json)
        {
            await streams.Error.WriteLineAsync(AdviseAnswer.Caution);
        }

        return anyFailed ? ExitCode.Failed : ExitCode.Good;
    }

    private static IEnumerable<string> HeaderErrors(string[] columns)
    {
        string[] known = [.. AdviseArguments.All.Select(argument => argument.Name)];
        foreach (string unknown in columns.Where(column => !known.Contains(column)))
        {
            yield return unknown.Contains(';', StringComparison.Ordinal) || unknown.Contains('\t', StringComparison.Ordinal)
                ? $"--table: column '{unknown}' is not an argument; separate columns with commas, for example temperature,humidity,coat"
                : $"--table: column '{unknown}' is not an argument; {NearestName.Hint(unknown, known)}";
        }

        foreach (string twice in columns.GroupBy(column => column).Where(group => group.Count() > 1).Select(group => group.Key))
        {
            yield return $"--table: column '{twice}' is there more than once; keep one";
        }
    }

    private static string OnOneLine(string record)
    {
        string line = record.Trim().ReplaceLineEndings(" / ");
        return line.Length <= LongestQuote ? line : line[..LongestQuote] + "...";
    }

    private static string? WrongCount(string[] cells, string[] columns) => cells.Length == columns.Length
        ? null
        : $"the row has {cells.Length} cells and the header {columns.Length}; give one cell a column, blank for the default";

    private Outcome Answer(Row row, string[] columns)
    {
        IReadOnlyList<ArgumentError> errors;
        if (row.Problem is not null)
        {
            errors = [new ArgumentError("", null, row.Problem)];
        }
        else
        {
            var given = new Dictionary<string, string>(commandLine);
            for (int i = 0; i < columns.Length; i++)
            {
                if (!string.IsNullOrWhiteSpace(row.Cells[i]))
                {
                    given[columns[i]] = row.Cells[i];
                }
            }

            if (adviser.Answer(given, out errors) is { } answer)
            {
                return new Outcome(json ? AdviseJson.Write(answer, row.Number, row.Line) : AdviseText.WriteRow(answer, adviser.Unit, row.Line), Failed: answer.Film is null);
            }
        }

        return new Outcome(json ? AdviseJson.WriteErrors(errors, row.Number, row.Line) : AdviseText.WriteErrorRow(errors, row.Line), Failed: true);
    }
}
