using System.Text.Json;
using BoothWatch.Service.Commands;
using BoothWatch.Service.Tests.Advice;

namespace BoothWatch.Service.Tests.Commands.Advise;

public class AdviseTableTests
{
    [Fact]
    public async Task Rows_AreAnsweredInOrder_AndBadOnesNamedWithLineAndField()
    {
        CommandResult result = await Table("advise --table - --json", """
            # airs of a week
            temperature,humidity,coat,retarder
            22,45,clear,

            22,155,clear,
            22,60,flash,5
            warm,60,gloss,
            22,60
            22,62,"cl"ear",

            """ + "24,50,sealer,0");

        Assert.Equal(1, result.ExitCode);
        JsonElement[] answers = Lines(result);
        Assert.All(answers, answer => Assert.True(AdviseSchema.Accepts(answer.GetRawText()), answer.GetRawText()));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7], answers.Select(answer => answer.GetProperty("row").GetInt32()));
        Assert.Equal([3, 5, 6, 7, 8, 9, 10], answers.Select(answer => answer.GetProperty("line").GetInt32()));
        Assert.Equal([[], ["humidity"], [], ["coat", "temperature"], [""], [""], []], answers.Select(Fields));
        Assert.Equal("sealer", answers[6].GetProperty("inputs").GetProperty("coat").GetString());
        Assert.Contains("2 cells and the header 4", result.Out, StringComparison.Ordinal);
        Assert.Contains("humidity is '155': out of range; give a relative humidity from 1 to 100 %", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task GoodTable_InText_IsOneAlignedLineARow()
    {
        CommandResult result = await Table("advise --table -", "temperature,humidity\n22,45\n75F,60%\n");

        Assert.Equal(0, result.ExitCode);
        string[] lines = result.Out.TrimEnd().Split('\n');
        Assert.Equal(3, lines.Length);
        Assert.StartsWith("line  verdict", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("   2  spray         22.0   45.0", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("   3  spray         23.9   60.0", lines[2], StringComparison.Ordinal);
        Assert.Contains("advice about the finish only", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task BlankCell_TakesTheCommandLine_AndElseTheDefault()
    {
        CommandResult result = await Table("advise --table - --json --coat flash --humidity 50", "temperature,humidity,coat\n22,,\n22,40,clear\n");

        JsonElement[] inputs = [.. Lines(result).Select(answer => answer.GetProperty("inputs"))];
        Assert.Equal([50, 40], inputs.Select(input => input.GetProperty("relativeHumidityPct").GetDouble()));
        Assert.Equal(["flash", "clear"], inputs.Select(input => input.GetProperty("coat").GetString()));
        Assert.Equal([40, 75], inputs.Select(input => input.GetProperty("wetFilmUm").GetDouble()));
    }

    [Theory]
    [InlineData("temprature,humidity\n22,45\n", "--table: column 'temprature' is not an argument; did you mean temperature?")]
    [InlineData("temperature;humidity\n22;45\n", "--table: column 'temperature;humidity' is not an argument; separate columns with commas, for example temperature,humidity,coat")]
    [InlineData("temperature,humidity,humidity\n22,45,46\n", "--table: column 'humidity' is there more than once; keep one")]
    [InlineData("", "--table: the table is empty; its first line names the columns, for example temperature,humidity,coat")]
    public async Task WrongHeader_IsAnErrorBeforeTheFirstRow(string table, string error)
    {
        CommandResult result = await Table("advise --table -", table);

        Assert.Equal((2, ""), (result.ExitCode, result.Out));
        Assert.Equal(error, result.Error.TrimEnd());
    }

    [Fact]
    public async Task EveryCornerOfTheRanges_IsAnsweredOrWaits_AndNeverFails()
    {
        string[] rows =
        [
            .. from temperature in (string[])["-15", "55"]
               from humidity in (string[])["1", "100"]
               from piece in (string[])["-15", "55"]
               from film in (string[])["10", "300"]
               from air in (string[])["0", "5"]
               select $"{temperature},{humidity},{piece},{film},{air},30,500,0.01,100",
        ];

        CommandResult result = await Table("advise --table - --json", "temperature,humidity,piece,wet-film,air-speed,retarder,pressure,lacquer,thinner\n" + string.Join('\n', rows));

        JsonElement[] answers = Lines(result);
        Assert.Equal(rows.Length, answers.Length);
        Assert.All(answers, answer => Assert.True(AdviseSchema.Accepts(answer.GetRawText()), answer.GetRawText()));
        Assert.All(answers, answer => Assert.False(answer.TryGetProperty("errors", out _), answer.GetRawText()));
    }

    [Fact]
    public async Task OpenQuote_IsNamedWithAllThatItSwallowed_OnOneLine()
    {
        CommandResult result = await Table("advise --table - --json", "temperature,humidity\n22,45\n\"24,50\n22,46\n");

        Assert.Equal(1, result.ExitCode);
        JsonElement[] answers = Lines(result);
        Assert.Equal(2, answers.Length);
        Assert.EndsWith("in: \"24,50 / 22,46", answers[1].GetProperty("errors")[0].GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task FullDisk_IsReported_AndReturns1()
    {
        using var output = new FullDiskWriter();
        using var error = new StringWriter();
        using var input = new StringReader("temperature,humidity\n22,45\n");

        int exitCode = await CommandLine.RunAsync(["advise", "--table", "-", "--json"], new CommandStreams(input, output, error));

        Assert.Equal(1, exitCode);
        Assert.StartsWith("stopped before the end: no space", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task HeaderAlone_IsNoError() => Assert.Equal(0, (await Table("advise --table - --json", "temperature,humidity\n")).ExitCode);

    [Fact]
    public async Task Header_WithByteOrderMarkDashesAndCapitals_IsUnderstood()
    {
        string path = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(path, "--Temperature;x", System.Text.Encoding.UTF8);
            await File.WriteAllTextAsync(path, "--Temperature,Humidity\r\n22,45\r\n", new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: true));

            CommandResult result = await CommandRun.With(["advise", "--table", path, "--json"]);

            Assert.Equal((0, ""), (result.ExitCode, result.Error));
            Assert.Single(Lines(result));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public async Task MissingFile_IsNamed()
    {
        CommandResult result = await CommandRun.With("advise --table no-such.csv");

        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith("--table is 'no-such.csv': ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Answers_ComeWhileTheTableIsStillBeingWritten()
    {
        using var output = new AnnouncingWriter();
        // The second row is only handed out once the first answer is there.
        using var input = new StagedReader(["temperature,humidity\n22,45\n", "22,46\n"], output.FirstAnswer);
        using var error = new StringWriter();

        int exitCode = await CommandLine.RunAsync(["advise", "--table", "-", "--json"], new CommandStreams(input, output, error))
            .WaitAsync(TimeSpan.FromMinutes(2));

        Assert.Equal((0, 2), (exitCode, output.Lines));
    }

    [Fact]
    public async Task Cancelling_WhileTheTableIsOpen_Returns130()
    {
        using var output = new AnnouncingWriter();
        using var input = new StagedReader(["temperature,humidity\n22,45\n", "22,46\n"], new TaskCompletionSource().Task);
        using var error = new StringWriter();
        using var cancel = new CancellationTokenSource();

        Task<int> run = CommandLine.RunAsync(["advise", "--table", "-", "--json"], new CommandStreams(input, output, error), cancel.Token);
        await output.FirstAnswer.WaitAsync(TimeSpan.FromMinutes(2));
        await cancel.CancelAsync();

        Assert.Equal(130, await run.WaitAsync(TimeSpan.FromMinutes(2)));
        input.Release();
    }

    private static Task<CommandResult> Table(string line, string table) => CommandRun.With(line.Split(' '), table);

    private static JsonElement[] Lines(CommandResult result) => [.. result.Out.TrimEnd().Split('\n').Select(AdviseSchema.Parse)];

    private static string[] Fields(JsonElement answer) => answer.TryGetProperty("errors", out JsonElement errors)
        ? [.. errors.EnumerateArray().Select(error => error.GetProperty("field").GetString() ?? "").Order()]
        : [];

    private sealed class FullDiskWriter : StringWriter
    {
        public override Task WriteLineAsync(string? value) => Task.FromException(new IOException("no space left on device"));
    }

    /// <summary>Says when the first line has been written.</summary>
    private sealed class AnnouncingWriter : StringWriter
    {
        private readonly TaskCompletionSource _first = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task FirstAnswer => _first.Task;

        public int Lines { get; private set; }

        public override Task WriteLineAsync(string? value)
        {
            Lines++;
            _first.TrySetResult();
            return base.WriteLineAsync(value);
        }
    }

    /// <summary>Hands out the first text at once and the others after a signal.</summary>
    private sealed class StagedReader(string[] stages, Task afterFirst) : TextReader
    {
        private readonly TaskCompletionSource _released = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private int _next;

        public void Release() => _released.TrySetResult();

        public override async ValueTask<int> ReadAsync(Memory<char> buffer, CancellationToken cancellationToken = default)
        {
            if (_next > 0)
            {
                await Task.WhenAny(afterFirst, _released.Task);
            }

            if (_next == stages.Length)
            {
                return 0;
            }

            string stage = stages[_next++];
            stage.CopyTo(buffer.Span);
            return stage.Length;
        }

        public override Task<int> ReadAsync(char[] buffer, int index, int count) => ReadAsync(buffer.AsMemory(index, count)).AsTask();
    }
}
