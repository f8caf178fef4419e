using System.Text;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Setup;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Setup;

public sealed class ConfigurationVersionsTests : IDisposable
{
    private const int Kills = 3;

    private readonly ConfigFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Replace_KeepsTheLastVersions_TheNewestFirst()
    {
        ConfigurationVersions versions = new(_folder.JsonPath);
        for (int i = 0; i < ConfigurationVersions.Kept + 3; i++)
        {
            versions.Replace(Bytes($"text {i}"));
        }

        Assert.Equal("text 7", _folder.Text);
        Assert.Equal(["text 6", "text 5", "text 4", "text 3", "text 2"], Enumerable.Range(1, 5).Select(number => File.ReadAllText($"{_folder.JsonPath}.{number}")));
        Assert.Equal(1 + ConfigurationVersions.Kept, _folder.Names.Length);
    }

    [Fact]
    public void Restore_StepByStep_LeadsBackToTheFirst_AndKeepsWhatWasUndone()
    {
        ConfigurationVersions versions = new(_folder.JsonPath);
        string first = _folder.Text;
        versions.Replace(Bytes("two"));
        versions.Replace(Bytes("three"));
        foreach ((string expected, string undone) in new[] { ("two", "three"), (first, "two") })
        {
            (int number, byte[] text, _) = versions.Previous(versions.Read())!.Value;
            versions.Restore(number, text);
            Assert.Equal(expected, _folder.Text);
            Assert.Equal(undone, File.ReadAllText(ConfigurationVersions.UndonePath(_folder.JsonPath)));
        }

        Assert.Null(versions.Previous(versions.Read()));
        Assert.Equal(["boothwatch.json", "boothwatch.json.undone"], _folder.Names);
    }

    [Fact]
    public void Previous_ThatIsTheSameAsThePresent_IsPassedOver()
    {
        ConfigurationVersions versions = new(_folder.JsonPath);
        string first = _folder.Text;
        versions.Replace(Bytes("two"));
        versions.Replace(Bytes("two"));
        (int number, byte[] text, _) = versions.Previous(versions.Read())!.Value;
        Assert.Equal((2, first), (number, Encoding.UTF8.GetString(text)));
    }

    [Fact]
    public void Replace_KeepsTheModeOfTheFile_ForItsVersionsToo()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        const UnixFileMode Mode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead;
        File.SetUnixFileMode(_folder.JsonPath, Mode);
        new ConfigurationVersions(_folder.JsonPath).Replace(Bytes("two"));
        Assert.Equal((Mode, Mode), (File.GetUnixFileMode(_folder.JsonPath), File.GetUnixFileMode(_folder.JsonPath + ".1")));
    }

    [Fact]
    public void Refusal_OfAnOrdinaryFile_IsNone_AndOfAnythingElseSaysWhy()
    {
        Assert.Null(new ConfigurationVersions(_folder.JsonPath).Refusal);
        Assert.Contains("is gone", new ConfigurationVersions(_folder.JsonPath + "x").Refusal, StringComparison.Ordinal);
        string link = Path.Combine(_folder.Folder, "link.json");
        File.CreateSymbolicLink(link, _folder.JsonPath);
        Assert.Contains("symbolic link", new ConfigurationVersions(link).Refusal, StringComparison.Ordinal);
        File.WriteAllBytes(_folder.JsonPath, new byte[ConfigurationVersions.LargestBytes + 1]);
        Assert.Contains("no configuration", new ConfigurationVersions(_folder.JsonPath).Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Refusal_OfAFileThatThisUserMayNotWrite_SaysSo()
    {
        if (OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess)
        {
            return; // root may write everywhere
        }

        File.SetUnixFileMode(_folder.JsonPath, UnixFileMode.UserRead);
        Assert.Contains("may not write", new ConfigurationVersions(_folder.JsonPath).Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Unlocking_OfAFileThatIsReadOnlyForTheService_IsLinesToCopy_AndElseNone()
    {
        ConfigurationEditor editor = new(ConfigurationFile.Read(_folder.JsonPath), NullLogger<ConfigurationEditor>.Instance);
        Assert.Empty(editor.Unlocking(isUnit: true));
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        File.SetUnixFileMode(_folder.JsonPath, UnixFileMode.UserRead);
        string[] lines = [.. editor.Unlocking(isUnit: true)];
        Assert.Equal($"sudo chown {Environment.UserName}: {_folder.Folder} {_folder.JsonPath}", lines[0]);
        Assert.Contains($"printf '[Service]\\nReadWritePaths=%s\\n' {_folder.Folder} | sudo tee /etc/systemd/system/boothwatch.service.d/setup.conf", lines);
        Assert.Equal(lines[..1], editor.Unlocking(isUnit: false));
        File.SetUnixFileMode(_folder.JsonPath, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        File.Delete(_folder.JsonPath);
        Assert.Empty(editor.Unlocking(isUnit: true));
    }

    [Fact]
    public async Task Replace_KilledAtAnyMoment_LeavesWholeFiles()
    {
        Random random = new(20261125);
        byte[][] whole = [File.ReadAllBytes(_folder.JsonPath), SettingsWriter.Text(0), SettingsWriter.Text(1)];
        int written = 0;
        for (int kill = 0; kill < Kills; kill++)
        {
            written += await WriteUntilKilledAsync(TimeSpan.FromMilliseconds(random.Next(100, 500)));
            string[] paths = [_folder.JsonPath, .. Enumerable.Range(1, ConfigurationVersions.Kept).Select(number => $"{_folder.JsonPath}.{number}").Where(File.Exists)];
            Assert.All(paths, path => Assert.Contains(whole, text => text.AsSpan().SequenceEqual(File.ReadAllBytes(path))));
            Assert.True(paths.Length >= ConfigurationVersions.Kept, "earlier versions were lost");
        }

        Assert.True(written > 10, $"only {written} files were written: the kills proved little");
    }

    private async Task<int> WriteUntilKilledAsync(TimeSpan after)
    {
        string[] lines = await KilledWriter.RunAsync(
            SettingsWriter.Command, _folder.JsonPath, after, patience: TimeSpan.FromSeconds(120), firstLines: ConfigurationVersions.Kept);
        return lines.Length - ConfigurationVersions.Kept;
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
