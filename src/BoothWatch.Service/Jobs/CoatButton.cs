using System.Device.Gpio;
using System.Threading.Channels;
using BoothWatch.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Jobs;

/// <summary>The push button at the booth: a press begins the next coat of the running job, the next press ends it. Without a pin it does nothing.</summary>
internal sealed partial class CoatButton(
    IOptions<JobsOptions> options, GpioSource pins, JobDesk desk, TimeProvider time, ILogger<CoatButton> logger) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (options.Value.ButtonPin is not { } pin)
        {
            return;
        }

        await Task.Yield();
        Channel<bool> presses = Channel.CreateBounded<bool>(new BoundedChannelOptions(4) { FullMode = BoundedChannelFullMode.DropWrite });
        GpioController? controller = Open(pin);
        if (controller is null)
        {
            return;
        }

        PinValue closed = options.Value.ButtonActiveHigh ? PinValue.High : PinValue.Low;
        using Debounce debounce = new(
            time, TimeSpan.FromMilliseconds(options.Value.ButtonDebounceMs), () => controller.Read(pin) == closed, () => presses.Writer.TryWrite(true));
        void Changed(object sender, PinValueChangedEventArgs change) => debounce.Edge();
        controller.RegisterCallbackForPinValueChangedEvent(pin, PinEventTypes.Rising | PinEventTypes.Falling, Changed);
        try
        {
            await foreach (bool _ in presses.Reader.ReadAllAsync(stoppingToken))
            {
                Press();
            }
        }
        finally
        {
            controller.UnregisterCallbackForPinValueChangedEvent(pin, Changed);
            controller.ClosePin(pin);
        }
    }

    private void Press()
    {
        try
        {
            if (desk.Press(EntrySource.Button) is { } done)
            {
                LogPressed(done);
            }
            else
            {
                LogNoJob();
            }
        }
        catch (Exception refused) when (refused is JobRuleException or JournalException)
        {
            LogRefused(refused.Message);
        }
    }

    private GpioController? Open(int pin)
    {
        try
        {
            GpioController controller = pins.Controller(options.Value.ButtonSource == "real" ? SignalSource.Real : SignalSource.Emulated);
            if (controller.IsPinOpen(pin))
            {
                LogPinTaken(pin);
                return null;
            }

            controller.OpenPin(pin, options.Value.ButtonActiveHigh ? PinMode.InputPullDown : PinMode.InputPullUp);
            return controller;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException or InvalidOperationException or ArgumentException or DllNotFoundException)
        {
            LogPinFailed(pin, failure.Message);
            return null;
        }
    }

    [LoggerMessage(301, LogLevel.Information, "Button: {Done}")]
    private partial void LogPressed(string done);

    [LoggerMessage(302, LogLevel.Warning, "Button pressed, but no job is running: start one on the page")]
    private partial void LogNoJob();

    [LoggerMessage(303, LogLevel.Error, "Button pressed, but nothing was marked: {Problem}")]
    private partial void LogRefused(string problem);

    [LoggerMessage(304, LogLevel.Error, "jobs:buttonPin is {Pin}, which is in use for something else; give another GPIO. The button does nothing")]
    private partial void LogPinTaken(int pin);

    [LoggerMessage(305, LogLevel.Error, "jobs:buttonPin {Pin} cannot be read: {Problem}. The button does nothing")]
    private partial void LogPinFailed(int pin, string problem);
}
