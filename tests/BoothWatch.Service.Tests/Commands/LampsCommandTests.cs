using System.Device.Gpio;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using BoothWatch.Service.Commands;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Tests.Outputs.Light;

namespace BoothWatch.Service.Tests.Commands;

public sealed class LampsCommandTests : IDisposable
{
    // A real light stands beside real sensors, or beside parts that are being proved.
    private const string Real = "\"sensors\": { \"proving\": true },";

    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch").FullName;
    private readonly JumpingTime _time = new();
    private readonly GpioSource _pins;
    private readonly string _board = Guid.NewGuid().ToString();

    public LampsCommandTests() => _pins = new GpioSource(_time);

    public void Dispose()
    {
        _pins.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Lamps_OnVirtualPins_ShowEachAndSayThatNoLampLightsUp()
    {
        CommandResult result = await Lamps(FreePage());

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.StartsWith("light:source is emulated", result.Out, StringComparison.Ordinal);
        Assert.Contains("spray      green on GPIO 5, ", result.Out, StringComparison.Ordinal);
        Assert.Equal(PinValue.High, _pins.Virtual.Driven(22));
        Assert.Equal([5, 22, 27], _pins.Virtual.Changes.Where(change => change.Value == PinValue.High).Select(change => change.Pin).Distinct().Order());
    }

    [Fact]
    public async Task Lamps_WhileBoothWatchHoldsTheFolder_AreRefusedAndNoPinIsTouched()
    {
        using RunClaim running = RunClaim.Take(_folder);

        CommandResult result = await Lamps(FreePage());

        Assert.Equal((2, ""), (result.ExitCode, result.Out));
        Assert.StartsWith($"the lamps belong to a running BoothWatch: another BoothWatch already runs with the folder {_folder}", result.Error, StringComparison.Ordinal);
        Assert.Empty(_pins.Virtual.Changes);
    }

    [Fact]
    public async Task Lamps_WhileSomethingListensWhereThePageIs_AreRefused()
    {
        using TcpListener page = new(IPAddress.Loopback, 0);
        page.Start();

        CommandResult result = await Lamps(page.LocalEndpoint.ToString()!);

        Assert.Equal((2, ""), (result.ExitCode, result.Out));
        Assert.Contains("stop the service first", result.Error, StringComparison.Ordinal);
        Assert.Empty(_pins.Virtual.Changes);
    }

    [Fact]
    public async Task Lamps_OnRealPins_AreNotedForTheSetupPage_AndThoseOfAnotherProgramAreLeftAlone()
    {
        using GpioSource board = new(_time, () => new GpioController(_pins.Virtual));
        using (PinClaim running = PinClaim.Take(new LightOptions { Source = "real", GreenPin = 5 }, _board))
        {
            CommandResult refused = await Lamps(FreePage(), board, Real);
            Assert.Equal((2, ""), (refused.ExitCode, refused.Out));
            Assert.StartsWith("the lamps belong to a running BoothWatch: GPIO 5 (light:greenPin) is driven by another", refused.Error, StringComparison.Ordinal);
            Assert.Empty(_pins.Virtual.Changes);
        }

        CommandResult result = await Lamps(FreePage(), board, Real);
        LampTrials trials = new(_folder);
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains($"noted in {trials.FilePath}", result.Out, StringComparison.Ordinal);
        Assert.Equal(DateTimeOffset.UnixEpoch.AddSeconds(4), trials.Of("green", "real GPIO 5, active high")?.Time);
        Assert.NotNull(trials.Of("red", "real GPIO 22, active high"));
        Assert.Null(trials.Of("buzzer", "real GPIO 24, active high"));
    }

    [Fact]
    public async Task Lamps_ThatFailOrAreCutShort_AreNotNotedAsLit()
    {
        using GpioSource board = new(_time, () => new GpioController(_pins.Virtual));
        using CancellationTokenSource stop = new();
        _time.Waiting = elapsed =>
        {
            if (elapsed >= TimeSpan.FromSeconds(3))
            {
                stop.Cancel();
            }
        };
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Lamps(FreePage(), board, Real, stop.Token));
        LampTrials trials = new(_folder);
        Assert.NotNull(trials.Of("red", "real GPIO 22, active high"));
        Assert.Null(trials.Of("yellow", "real GPIO 27, active high"));

        using GpioSource none = new(_time, () => throw new PlatformNotSupportedException("no pins here"));
        CommandResult result = await Lamps(FreePage(), none, Real);
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("no pins here", trials.Of("red", "real GPIO 22, active high")?.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lamps_WithWhatIsNotTheirBusinessWrong_AreShownAllTheSame()
    {
        CommandResult result = await Lamps(FreePage(), _pins, """ "alerts": { "email": { "host": "mail.example", "from": "" } }, """);
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
    }

    private static string FreePage()
    {
        using TcpListener free = new(IPAddress.Loopback, 0);
        free.Start();
        return free.LocalEndpoint.ToString()!;
    }

    private Task<CommandResult> Lamps(string page) => Lamps(page, _pins, "");

    private async Task<CommandResult> Lamps(string page, GpioSource pins, string more, CancellationToken cancel = default)
    {
        string path = Path.Combine(_folder, "boothwatch.json");
        string source = more == Real ? "real" : "emulated";
        await File.WriteAllTextAsync(
            path,
            $$"""{ {{more}} "series": { "folder": {{JsonSerializer.Serialize(_folder)}} }, "page": { "url": "http://{{page}}" }, "light": { "source": "{{source}}", "greenPin": 5 } }""",
            CancellationToken.None);
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int exitCode = await LampsCommand.RunAsync(path, TimeSpan.FromSeconds(2), pins, _time, new CommandStreams(TextReader.Null, output, error), cancel, _board);
        return new CommandResult(exitCode, output.ToString(), error.ToString());
    }
}
