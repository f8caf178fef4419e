using System.Device.Gpio;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using BoothWatch.Service.Commands;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Tests.Outputs.Light;

namespace BoothWatch.Service.Tests.Commands;

public sealed class LampsCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch").FullName;
    private readonly JumpingTime _time = new();
    private readonly GpioSource _pins;

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

    private static string FreePage()
    {
        using TcpListener free = new(IPAddress.Loopback, 0);
        free.Start();
        return free.LocalEndpoint.ToString()!;
    }

    private async Task<CommandResult> Lamps(string page)
    {
        string path = Path.Combine(_folder, "boothwatch.json");
        await File.WriteAllTextAsync(path, $$"""{ "series": { "folder": {{JsonSerializer.Serialize(_folder)}} }, "page": { "url": "http://{{page}}" }, "light": { "greenPin": 5 } }""");
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int exitCode = await LampsCommand.RunAsync(path, TimeSpan.FromSeconds(2), _pins, _time, new CommandStreams(TextReader.Null, output, error), CancellationToken.None);
        return new CommandResult(exitCode, output.ToString(), error.ToString());
    }
}
