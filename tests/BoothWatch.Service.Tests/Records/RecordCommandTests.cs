using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Commands;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Records;

/// <summary><c>record</c> on a journal in a temporary folder.</summary>
public sealed class RecordCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-record-").FullName;
    private readonly string _config;

    public RecordCommandTests()
    {
        _config = Path.Combine(_folder, "c.json");
        File.WriteAllText(_config, JsonSerializer.Serialize(new { series = new { folder = _folder } }));
        JournalLocation location = new(Path.Combine(_folder, JournalLocation.DemoFileName), IsDemo: true);
        using Journal journal = new(location, TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        JobStore store = new(journal, location);
        Job job = store.Start(TestJob.Details, TestJob.Day, EntrySource.Page);
        job = store.MarkCoat(job.Id, TestJob.Coat(10, retarderPct: 4), TestJob.Moment(0.4), TestJob.Day.AddMinutes(10), EntrySource.Button);
        store.Append(job.Id, new CoatStopped(job.LastCoat!.Id, TestJob.Day.AddMinutes(16)), TestJob.Day.AddMinutes(16), EntrySource.Button);
        store.Append(job.Id, new JobFinished(), TestJob.Day.AddDays(1), EntrySource.Page);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Show_OfAJob_PrintsItsCoatsOverridesAndHash()
    {
        CommandResult shown = await Run("record", "show", "1");
        Assert.Equal(0, shown.ExitCode);
        Assert.Contains("side table", shown.Out, StringComparison.Ordinal);
        Assert.Contains("override: coat 1, begun while the verdict was slow down", shown.Out, StringComparison.Ordinal);
        Assert.Contains("no check on record", shown.Out, StringComparison.Ordinal);
        Assert.Matches("SHA-256 [0-9a-f]{64}", shown.Out);
    }

    [Theory]
    [InlineData("json")]
    [InlineData("csv")]
    [InlineData("pdf")]
    public async Task Export_VerifiedAgain_MatchesAndAgainstTheJournalToo(string format)
    {
        string file = Path.Combine(_folder, "record." + format);
        CommandResult exported = await Run("record", "export", "1", "--format", format, "--out", file);
        Assert.Equal((0, ""), (exported.ExitCode, exported.Error));
        CommandResult verified = await Run("record", "verify", file, "--journal");
        Assert.True(verified.ExitCode == 0, verified.Out + verified.Error);
        Assert.Contains("gives the same data", verified.Out, StringComparison.Ordinal);

        string digits = Regex.Match(verified.Out, "[0-9a-f]{64}").Value;
        Assert.Contains("the one that you kept", (await Run("record", "verify", file, "--sha256", digits)).Out, StringComparison.Ordinal);
        Assert.Equal(1, (await Run("record", "verify", file, "--sha256", new string('0', 64))).ExitCode);
    }

    [Fact]
    public async Task Export_FromARecordFile_WritesItsDataAndRefusesAlteredData()
    {
        string pdf = Path.Combine(_folder, "record.pdf");
        string json = Path.Combine(_folder, "anew.json");
        await Run("record", "export", "1", "--out", pdf);
        Assert.Equal(0, (await Run("record", "export", pdf, "--out", json)).ExitCode);
        string before = Regex.Match((await Run("record", "verify", pdf)).Out, "[0-9a-f]{64}").Value;
        Assert.Equal(0, (await Run("record", "verify", json, "--sha256", before)).ExitCode);

        await File.WriteAllTextAsync(json, (await File.ReadAllTextAsync(json)).Replace("slow down", "spray", StringComparison.Ordinal));
        string anew = Path.Combine(_folder, "anew.pdf");
        Assert.Equal(1, (await Run("record", "export", json, "--out", anew)).ExitCode);
        Assert.False(File.Exists(anew));
    }

    [Theory]
    [InlineData("json")]
    [InlineData("csv")]
    public async Task Verify_OfAnAlteredFile_ExitsWith1(string format)
    {
        string file = Path.Combine(_folder, "record." + format);
        await Run("record", "export", "1", "--out", file);
        await File.WriteAllTextAsync(file, (await File.ReadAllTextAsync(file)).Replace("slow down", "spray", StringComparison.Ordinal));
        CommandResult verified = await Run("record", "verify", file);
        Assert.Equal(1, verified.ExitCode);
        Assert.StartsWith("ALTERED", verified.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Verify_OfAPdfWithAlteredOrMissingData_ExitsWith1()
    {
        string file = Path.Combine(_folder, "record.pdf");
        await Run("record", "export", "1", "--out", file);
        byte[] bytes = await File.ReadAllBytesAsync(file);
        await File.WriteAllBytesAsync(file, Encoding.Latin1.GetBytes(Encoding.Latin1.GetString(bytes).Replace("record.json", "recorb.json", StringComparison.Ordinal)));
        Assert.Equal(1, (await Run("record", "verify", file)).ExitCode);
        await File.WriteAllBytesAsync(file, bytes[..(bytes.Length / 2)]);
        Assert.Equal(1, (await Run("record", "verify", file)).ExitCode);
    }

    [Theory]
    [InlineData("record show", "number")]
    [InlineData("record show none", "'none'")]
    [InlineData("record show 9", "not in")]
    [InlineData("record export 1", "--out")]
    [InlineData("record export 1 --out x.doc", "pdf, csv or json")]
    [InlineData("record export 1 --out x.pdf --paper A3", "A4 or Letter")]
    [InlineData("record verify", "file is missing")]
    [InlineData("record verify /nowhere/record.json", "Give a record")]
    [InlineData("record verify x.json --sha256 12", "64")]
    public async Task Arguments_ThatAreWrong_ExitWith2AndSayWhatToGive(string line, string says)
    {
        CommandResult result = await Run(line.Split(' '));
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(says, result.Error, StringComparison.Ordinal);
    }

    private Task<CommandResult> Run(params string[] args) => CommandRun.With([.. args, "--config", _config]);
}
