using BoothWatch.Service.Outputs.Light;

namespace BoothWatch.Service.Tests.Outputs.Light;

public sealed class LampTrialsTests : IDisposable
{
    private static readonly DateTimeOffset Time = new(2026, 11, 25, 10, 42, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch").FullName;
    private readonly LampTrials _trials;

    public LampTrialsTests() => _trials = new LampTrials(_folder);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Trial_IsKeptForItsWiringAlone_AndALaterOneTakesItsPlace()
    {
        Assert.Null(_trials.Of("green", "real GPIO 17, active high"));
        _trials.Keep(new Dictionary<string, LampTrial> { ["green"] = new("real GPIO 17, active high", Time, null), ["red"] = new("real GPIO 22, active high", Time, "gone") });
        _trials.Keep(new Dictionary<string, LampTrial> { ["red"] = new("real GPIO 22, active high", Time.AddHours(1), null) });

        Assert.Equal(new LampTrial("real GPIO 17, active high", Time, null), _trials.Of("green", "real GPIO 17, active high"));
        Assert.Equal((Time.AddHours(1), null), _trials.Of("red", "real GPIO 22, active high") is { } red ? (red.Time, red.Fault) : default);
        Assert.Null(_trials.Of("green", "real GPIO 18, active high"));
        Assert.Null(_trials.Of("green", "real GPIO 17, active low"));
        Assert.Equal(["lamps.json"], Directory.GetFiles(_folder).Select(Path.GetFileName));
    }

    [Fact]
    public void File_IsReadableForTheServiceWhoeverWroteIt()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        _trials.Keep(new Dictionary<string, LampTrial>());
        Assert.True(File.GetUnixFileMode(_trials.FilePath).HasFlag(UnixFileMode.OtherRead));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{ \"green\": ")]
    [InlineData("[]")]
    [InlineData("{ \"green\": null }")]
    public void File_ThatCannotBeRead_TellsOfNoTrial(string text)
    {
        File.WriteAllText(_trials.FilePath, text);
        Assert.Null(_trials.Of("green", "real GPIO 17, active high"));
        _trials.Keep(new Dictionary<string, LampTrial> { ["green"] = new("real GPIO 17, active high", Time, null) });
        Assert.NotNull(_trials.Of("green", "real GPIO 17, active high"));
    }
}
