using System.Collections.Immutable;
using System.Device.Gpio;
using System.Globalization;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outputs.Light;

/// <summary>The real light on virtual pins and a clock of the test: green 17, yellow 27, red 22, buzzer 24.</summary>
internal sealed class LightBench : IDisposable
{
    public const int Green = 17;
    public const int Yellow = 27;
    public const int Red = 22;
    public const int Buzzer = 24;

    private static readonly DateTimeOffset Start = new(2026, 6, 1, 8, 0, 0, TimeSpan.Zero);
    private readonly CountingLogger _logger = new();
    private int _seen;

    public LightBench(Action<LightOptions>? configure = null, Action<GpioController>? before = null, Func<GpioDriver, GpioController>? make = null)
    {
        Time = new FakeTimeProvider(Start);
        Pins = new VirtualGpioDriver(Time);
        Controller = make?.Invoke(Pins) ?? new GpioController(Pins);
        LightOptions options = new();
        configure?.Invoke(options);
        before?.Invoke(Controller);
        Light = new BoothLight(new LampPins(() => Controller, options), options, Time, _logger);
    }

    public FakeTimeProvider Time { get; }

    public VirtualGpioDriver Pins { get; }

    public GpioController Controller { get; }

    public BoothLight Light { get; }

    public IReadOnlyList<string> Logged => _logger.Messages;

    /// <summary>Runs the clock step by step; a verdict given here is shown once a second, as the loop does.</summary>
    public LightBench Run(double seconds, Verdict? shown = null)
    {
        int steps = (int)Math.Round(seconds / LightPatterns.Step.TotalSeconds);
        for (int step = 0; step < steps; step++)
        {
            if (shown is { } verdict && step % 20 == 0)
            {
                Light.Show(verdict);
            }

            Time.Advance(LightPatterns.Step);
        }

        return this;
    }

    /// <summary>What happened on the pins since the last call: seconds since the start, lamp, level.</summary>
    public string[] News()
    {
        ImmutableArray<PinChange> all = [.. Pins.Changes];
        string[] news = [.. all.Skip(_seen).Select(Describe)];
        _seen = all.Length;
        return news;
    }

    /// <summary>True when green and red were driven on together at any moment so far.</summary>
    public bool GreenAndRedTogether(bool activeLow = false)
    {
        PinValue on = activeLow ? PinValue.Low : PinValue.High;
        bool green = false;
        bool red = false;
        foreach (PinChange change in Pins.Changes)
        {
            green = change.Pin == Green ? change.Value == on : green;
            red = change.Pin == Red ? change.Value == on : red;
            if (green && red)
            {
                return true;
            }
        }

        return false;
    }

    public void Dispose()
    {
        Light.Dispose();
        Controller.Dispose();
    }

    private static string Describe(PinChange change)
    {
        string lamp = change.Pin switch { Green => "green", Yellow => "yellow", Red => "red", Buzzer => "buzzer", _ => $"GPIO {change.Pin}" };
        string level = change.Value is { } value ? (value == PinValue.High ? "high" : "low") : "open";
        return string.Create(CultureInfo.InvariantCulture, $"{(change.Time - Start).TotalSeconds:0.00} {lamp} {level}");
    }

    private sealed class CountingLogger : ILogger<BoothLight>
    {
        public List<string> Messages { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Messages.Add($"{logLevel}: {formatter(state, exception)}");
    }
}
