using System.Device.Gpio;
using System.Globalization;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Tests.Outputs.Light;

/// <summary>The patterns are those of docs/verdict.md: red steady, yellow half on and half off, green with a short wink every 2 s.</summary>
public sealed class LampShowTests : IDisposable
{
    private const int Green = 17, Yellow = 27, Red = 22, Buzzer = 24;

    private readonly JumpingTime _time = new();
    private readonly StringWriter _said = new() { NewLine = "\n" };
    private readonly VirtualGpioDriver _pins;
    private readonly GpioController _controller;

    public LampShowTests()
    {
        _pins = new VirtualGpioDriver(_time);
        _controller = new GpioController(_pins);
    }

    public void Dispose()
    {
        _controller.Dispose();
        _said.Dispose();
    }

    [Fact]
    public async Task Show_OfEachVerdict_IsItsPatternOnItsPinAndEndsWithRed()
    {
        Assert.True(await Show(new LightOptions { BuzzerPin = Buzzer }, seconds: 3));

        // Every pin is opened dark; the time of each change is in whole steps of 0.05 s.
        Assert.Equal(
            [
                "0 red 1",
                "3 red 0", "3 yellow 1", "3.5 yellow 0", "4 yellow 1", "4.5 yellow 0", "5 yellow 1", "5.5 yellow 0",
                "6 green 1", "7.8 green 0", "8 green 1",
                "9 green 0", "9 buzzer 1", "9.2 buzzer 0",
                "10.4 buzzer 1", "10.6 buzzer 0", "10.8 buzzer 1", "11 buzzer 0", "11.2 buzzer 1", "11.4 buzzer 0",
                "12.6 red 1",
            ],
            Changes());
        Assert.Equal(
            """
            wait       red on GPIO 22, steady
            slow down  yellow on GPIO 27, 0.5 s on, 0.5 s off
            spray      green on GPIO 17, 1.8 s on, 0.2 s off
            buzzer     on GPIO 24, 1 beep: slow down
            buzzer     on GPIO 24, 3 beeps: wait
            end        red on GPIO 22, as long as the pin keeps its level; every other output off

            """,
            _said.ToString());
    }

    [Fact]
    public async Task Show_WithActiveLowRelays_DrivesTheOtherLevel()
    {
        Assert.True(await Show(new LightOptions { ActiveLow = true }, seconds: 1));

        Assert.Equal((PinValue.Low, PinValue.High, PinValue.High), (_pins.Driven(Red), _pins.Driven(Yellow), _pins.Driven(Green)));
        Assert.Contains("buzzer     not fitted", _said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Show_WithASilentBuzzer_LeavesItSilent()
    {
        Assert.True(await Show(new LightOptions { BuzzerPin = Buzzer, BuzzerSilent = true }, seconds: 1));

        Assert.DoesNotContain(_pins.Changes, change => change.Pin == Buzzer && change.Value == PinValue.High);
        Assert.Contains("light:buzzerSilent is true", _said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Show_OfAPinThatAnotherHolds_NamesItAndEndsWithRed()
    {
        _controller.OpenPin(Yellow, PinMode.Input);

        Assert.False(await Show(new LightOptions(), seconds: 1));

        Assert.Contains("FAILED     Yellow on GPIO 27: the pin is in use by something else\n", _said.ToString(), StringComparison.Ordinal);
        Assert.Equal(PinValue.High, _pins.Driven(Red));
        Assert.DoesNotContain(_pins.Changes, change => change.Pin == Green && change.Value == PinValue.High);
    }

    [Fact]
    public async Task Show_StoppedWhileGreen_TurnsToRed()
    {
        using var stop = new CancellationTokenSource();
        _time.Waiting = elapsed =>
        {
            if (elapsed >= TimeSpan.FromSeconds(3))
            {
                stop.Cancel();
            }
        };

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Show(new LightOptions(), seconds: 1.25, stop.Token));

        Assert.Equal((PinValue.High, PinValue.Low), (_pins.Driven(Red), _pins.Driven(Green)));
        Assert.Contains(_pins.Changes, change => change.Pin == Green && change.Value == PinValue.High);
    }

    private Task<bool> Show(LightOptions options, double seconds, CancellationToken stop = default) =>
        new LampShow(new LampPins(() => _controller, options), options, _time, _said).RunAsync(TimeSpan.FromSeconds(seconds), stop);

    // What changed after the pins were opened: "seconds lamp level".
    private string[] Changes()
    {
        Dictionary<int, PinValue?> last = new() { [Green] = PinValue.Low, [Yellow] = PinValue.Low, [Red] = PinValue.Low, [Buzzer] = PinValue.Low };
        List<string> changes = [];
        foreach (PinChange change in _pins.Changes)
        {
            if (last[change.Pin] != change.Value)
            {
                string lamp = change.Pin switch { Green => "green", Yellow => "yellow", Red => "red", _ => "buzzer" };
                changes.Add(string.Create(CultureInfo.InvariantCulture, $"{(change.Time - DateTimeOffset.UnixEpoch).TotalSeconds:0.##} {lamp} {(change.Value == PinValue.High ? 1 : 0)}"));
                last[change.Pin] = change.Value;
            }
        }

        return [.. changes];
    }
}
