using System.Device.Gpio;
using BoothWatch.Service.Sensors.Emulation;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Sensors.Emulation;

public sealed class VirtualGpioDriverTests : IDisposable
{
    private readonly FakeTimeProvider _time = new();
    private readonly VirtualGpioDriver _driver;
    private readonly GpioController _controller;

    public VirtualGpioDriverTests()
    {
        _driver = new VirtualGpioDriver(_time);
        _controller = new GpioController(_driver);
    }

    public void Dispose()
    {
        _controller.Dispose();
        _driver.Dispose();
    }

    [Fact]
    public void Output_WrittenOverTime_KeepsEveryChangeWithItsTime()
    {
        DateTimeOffset start = _time.GetUtcNow();
        _controller.OpenPin(17, PinMode.Output, PinValue.High);
        _time.Advance(TimeSpan.FromSeconds(1));
        _controller.Write(17, PinValue.Low);
        _controller.Write(17, PinValue.Low);
        _time.Advance(TimeSpan.FromSeconds(2));
        _controller.ClosePin(17);

        Assert.Equal(
            [
                new PinChange(start, 17, PinValue.High),
                new PinChange(start.AddSeconds(1), 17, PinValue.Low),
                new PinChange(start.AddSeconds(3), 17, null),
            ],
            _driver.Changes);
    }

    [Fact]
    public void Controller_Disposed_ReleasesDrivenPins()
    {
        _controller.OpenPin(17, PinMode.Output, PinValue.High);
        Assert.Equal(PinValue.High, _driver.Driven(17));

        _controller.Dispose();

        Assert.Null(_driver.Driven(17));
        Assert.Null(_driver.Changes[^1].Value);
    }

    [Theory]
    [InlineData(PinMode.InputPullUp, true)]
    [InlineData(PinMode.InputPullDown, false)]
    [InlineData(PinMode.Input, false)]
    public void Input_NotDriven_FollowsItsPull(PinMode mode, bool high)
    {
        _controller.OpenPin(23, mode);
        Assert.Equal(high ? PinValue.High : PinValue.Low, _controller.Read(23));

        _driver.SetInput(23, high ? PinValue.Low : PinValue.High);
        Assert.Equal(high ? PinValue.Low : PinValue.High, _controller.Read(23));

        _driver.SetInput(23, null);
        Assert.Equal(high ? PinValue.High : PinValue.Low, _controller.Read(23));
    }

    [Fact]
    public void Input_Changing_RaisesTheMatchingEdgeOnly()
    {
        _controller.OpenPin(23, PinMode.InputPullUp);
        List<PinEventTypes> seen = [];
        _controller.RegisterCallbackForPinValueChangedEvent(23, PinEventTypes.Falling, (_, change) => seen.Add(change.ChangeType));

        _driver.SetInput(23, PinValue.Low);
        _driver.SetInput(23, PinValue.Low);
        _driver.SetInput(23, PinValue.High);

        Assert.Equal([PinEventTypes.Falling], seen);
    }

    [Fact]
    public void WaitForEvent_CancelledBeforeAnEdge_TimesOut()
    {
        _controller.OpenPin(23, PinMode.InputPullUp);
        using CancellationTokenSource cancelled = new();
        cancelled.Cancel();

        Assert.True(_controller.WaitForEvent(23, PinEventTypes.Rising, cancelled.Token).TimedOut);
    }

    [Fact]
    public void Pin_Misused_Throws()
    {
        GpioPin pin = _controller.OpenPin(23, PinMode.Output);
        pin.SetPinMode(PinMode.Input);
        Assert.Null(_driver.Driven(23));
        Assert.Throws<ArgumentOutOfRangeException>(() => _driver.SetInput(54, PinValue.High));
        Assert.Throws<InvalidOperationException>(() => _controller.Write(24, PinValue.High));
    }

    [Fact]
    public void Changes_PastTheLimit_ForgetsTheOldest()
    {
        _controller.OpenPin(5, PinMode.Output);
        for (int i = 0; i < VirtualGpioDriver.Remembered + 10; i++)
        {
            _controller.Toggle(5);
        }

        Assert.Equal(VirtualGpioDriver.Remembered, _driver.Changes.Count);
    }
}
