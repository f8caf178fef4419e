using System.Diagnostics;
using System.Text.Json;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Setup;

namespace BoothWatch.Service.Tests.Setup;

public sealed class LampCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch lamp's ").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Lines_OfTheUnit_HaveItsFileItsFolderAndItsOwnSettings_AndNoOther()
    {
        string[] lines = [.. Command("/etc/boothwatch/boothwatch.json", "/var/lib/boothwatch", new()
        {
            ["BOOTHWATCH_series__folder"] = "elsewhere",
            ["BOOTHWATCH_light__greenPin"] = "5",
            ["BOOTHWATCH_alerts__email__password"] = "hush",
            ["PATH"] = "/bin",
        }).Lines(isUnit: true)];

        Assert.Equal(("sudo systemctl stop boothwatch", "sudo systemctl start boothwatch"), (lines[0], lines[2]));
        Assert.StartsWith("sudo env BOOTHWATCH_light__greenPin=5 BOOTHWATCH_series__folder=/var/lib/boothwatch ", lines[1], StringComparison.Ordinal);
        Assert.EndsWith(" lamps --seconds 10 --config /etc/boothwatch/boothwatch.json", lines[1], StringComparison.Ordinal);
        Assert.DoesNotContain("hush", string.Concat(lines), StringComparison.Ordinal);
        Assert.DoesNotContain("PATH", string.Concat(lines), StringComparison.Ordinal);
    }

    /// <summary>The shell is the judge: names with spaces and quotes arrive whole, and the program finds file and folder.</summary>
    [Fact]
    public async Task Line_InAShell_RunsTheCommandWithThisFileAndThisFolder()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        string path = Path.Combine(_folder, "booth watch.json");
        await File.WriteAllTextAsync(path, """{ "page": { "url": "http://127.0.0.1:0" }, "light": { "greenPin": 5 } }""");
        string line = Command(path, _folder, []).Lines(isUnit: false)[0].Replace("--seconds 10", "--seconds 1", StringComparison.Ordinal);
        ProcessStartInfo start = new("sh", ["-c", line]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process shell = Process.Start(start)!;
        Task<string> said = shell.StandardOutput.ReadToEndAsync();
        string wrong = await shell.StandardError.ReadToEndAsync();
        await shell.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(2));
        Assert.Equal((0, ""), (shell.ExitCode, wrong));
        Assert.Contains("green on GPIO 5", await said, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_folder, "boothwatch.lock")), JsonSerializer.Serialize(Directory.GetFiles(_folder)));
    }

    private static LampCommand Command(string path, string folder, Dictionary<string, string> environment) =>
        new(ConfigurationFile.Read(null) with { Path = path }, new JournalLocation(Path.Combine(folder, JournalLocation.FileName), false), environment);
}
