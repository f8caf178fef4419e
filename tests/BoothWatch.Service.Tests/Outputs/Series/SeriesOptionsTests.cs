using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class SeriesOptionsTests
{
    private readonly SeriesOptionsValidator _validator = new();

    [Fact]
    public void Defaults_AreValid() => Assert.True(_validator.Validate(null, new SeriesOptions()).Succeeded);

    [Fact]
    public void Validate_WithSeveralErrors_NamesEachKeyValueAndRange()
    {
        var options = new SeriesOptions { RawDays = 0, MinuteYears = 101, SyncEveryS = double.NaN, Folder = "a\0b" };

        string[] failures = [.. _validator.Validate(null, options).Failures!];

        Assert.Equal(4, failures.Length);
        Assert.Contains("series:rawDays is 0; give days from 1 to 3660, for example 21", failures);
        Assert.Contains("series:minuteYears is 101; give years from 1 to 100, for example 5", failures);
        Assert.Contains("series:syncEveryS is NaN; give seconds from 0 to 300, for example 10", failures);
        Assert.Contains(failures, f => f.StartsWith("series:folder", StringComparison.Ordinal));
    }

    [Fact]
    public void Validate_WithRowsKeptLongerThanMinutes_SaysSo()
    {
        string failure = Assert.Single(_validator.Validate(null, new SeriesOptions { RawDays = 500, MinuteYears = 1 }).Failures!);
        Assert.Contains("at most 365 days", failure, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/var/lib/boothwatch", "/home/jo/.local/share", false, "/var/lib/boothwatch/journal.db")]
    [InlineData("/var/lib/boothwatch", "", true, "/var/lib/boothwatch/demo.db")]
    [InlineData("", "/home/jo/.local/share", true, "/home/jo/.local/share/boothwatch/demo.db")]
    [InlineData("", "/home/jo/.local/share", false, "/home/jo/.local/share/boothwatch/journal.db")]
    public void Location_FromFolderAndUser_IsTheFile(string folder, string stateFolder, bool isDemo, string expected) =>
        Assert.Equal(
            Path.GetFullPath(expected),
            JournalLocation.Of(new SeriesOptions { Folder = folder }, isDemo, stateFolder).Path);

    [Fact]
    public void Location_WithoutFolderAndHome_IsInTheWorkingFolder() =>
        Assert.Equal(
            Path.Combine(Environment.CurrentDirectory, "boothwatch-data", "journal.db"),
            JournalLocation.Of(new SeriesOptions(), isDemo: false, stateFolder: "").Path);
}
