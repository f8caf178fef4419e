using System.Device.Gpio;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>
/// GPIO pins without hardware. What a program drives onto output pins is kept with its time; what an input
/// pin sees is set from outside, and falls back to its pull resistor when nothing drives it.
/// </summary>
/// <param name="time">Clock that stamps the changes of output pins.</param>
/// <remarks>Safe to use from several threads. Pin numbers are logical (GPIO) numbers.</remarks>
public sealed class VirtualGpioDriver(TimeProvider time) : GpioDriver
{
    /// <summary>Number of pins.</summary>
    public const int Pins = GpioSource.HighestPin + 1;

    /// <summary>How many changes <see cref="Changes"/> remembers.</summary>
    public const int Remembered = 4096;

    private readonly Lock _lock = new();
    private readonly VirtualPin?[] _open = new VirtualPin?[Pins];
    private readonly PinValue?[] _outside = new PinValue?[Pins];
    private readonly Func<PinValue?>?[] _outsideSource = new Func<PinValue?>?[Pins];
    private readonly Queue<PinChange> _changes = new();

    /// <summary>Raised after a program has changed what it drives onto a pin, on the thread that did so.</summary>
    public event Action<PinChange>? OutputChanged;

    /// <summary>The last changes of driven pins, oldest first; at most <see cref="Remembered"/>.</summary>
    public IReadOnlyList<PinChange> Changes
    {
        get
        {
            lock (_lock)
            {
                return [.. _changes];
            }
        }
    }

    /// <inheritdoc/>
    protected override int PinCount => Pins;

    /// <summary>The level that a program drives onto <paramref name="pin"/> now; null when it drives none.</summary>
    public PinValue? Driven(int pin)
    {
        lock (_lock)
        {
            return _open[Checked(pin)] is { Mode: PinMode.Output } open ? open.Level : null;
        }
    }

    /// <summary>The mode in which a program has opened <paramref name="pin"/>; null when it has not.</summary>
    public PinMode? OpenMode(int pin)
    {
        lock (_lock)
        {
            return _open[Checked(pin)]?.Mode;
        }
    }

    /// <summary>Drives an input pin from outside, as a switch or relay does.</summary>
    /// <param name="pin">Logical pin number, 0 to 53.</param>
    /// <param name="value">The level; null leaves it to the pull resistor (an open contact).</param>
    public void SetInput(int pin, PinValue? value)
    {
        PinChangeEventHandler? handlers = null;
        PinEventTypes edge;
        lock (_lock)
        {
            VirtualPin? open = _open[Checked(pin)];
            PinValue before = Seen(pin);
            _outside[pin] = value;
            _outsideSource[pin] = null;
            PinValue after = Seen(pin);
            if (before == after)
            {
                return;
            }

            edge = after == PinValue.High ? PinEventTypes.Rising : PinEventTypes.Falling;
            handlers = open?.HandlersFor(edge);
        }

        handlers?.Invoke(this, new PinValueChangedEventArgs(edge, pin));
    }

    /// <summary>Drives an input pin from a source that is asked at each read. Raises no edge events.</summary>
    /// <param name="pin">Logical pin number, 0 to 53.</param>
    /// <param name="source">Gives the level; null from it leaves the pin to its pull resistor.</param>
    public void FollowInput(int pin, Func<PinValue?> source)
    {
        lock (_lock)
        {
            _outsideSource[Checked(pin)] = source;
        }
    }

    /// <inheritdoc/>
    protected override void OpenPin(int pinNumber)
    {
        lock (_lock)
        {
            if (_open[Checked(pinNumber)] is not null)
            {
                throw new InvalidOperationException($"GPIO {pinNumber} is already open.");
            }

            _open[pinNumber] = new VirtualPin();
        }
    }

    /// <inheritdoc/>
    protected override void ClosePin(int pinNumber)
    {
        PinChange? change;
        lock (_lock)
        {
            change = Drive(pinNumber, null);
            _open[pinNumber] = null;
        }

        Announce(change);
    }

    /// <inheritdoc/>
    protected override bool IsPinModeSupported(int pinNumber, PinMode mode) => Enum.IsDefined(mode);

    /// <inheritdoc/>
    protected override PinMode GetPinMode(int pinNumber)
    {
        lock (_lock)
        {
            return Opened(pinNumber).Mode;
        }
    }

    /// <inheritdoc/>
    protected override void SetPinMode(int pinNumber, PinMode mode) =>
        SetPinMode(pinNumber, mode, PinValue.Low);

    /// <inheritdoc/>
    protected override void SetPinMode(int pinNumber, PinMode mode, PinValue initialValue)
    {
        PinChange? change;
        lock (_lock)
        {
            Opened(pinNumber).Mode = mode;
            change = Drive(pinNumber, mode == PinMode.Output ? initialValue : null);
        }

        Announce(change);
    }

    /// <inheritdoc/>
    protected override PinValue Read(int pinNumber)
    {
        lock (_lock)
        {
            return Opened(pinNumber).Level ?? Seen(pinNumber);
        }
    }

    /// <inheritdoc/>
    protected override void Write(int pinNumber, PinValue value)
    {
        PinChange? change;
        lock (_lock)
        {
            if (Opened(pinNumber).Mode != PinMode.Output)
            {
                throw new InvalidOperationException($"GPIO {pinNumber} is not an output.");
            }

            change = Drive(pinNumber, value);
        }

        Announce(change);
    }

    /// <inheritdoc/>
    protected override void AddCallbackForPinValueChangedEvent(int pinNumber, PinEventTypes eventTypes, PinChangeEventHandler callback)
    {
        lock (_lock)
        {
            Opened(pinNumber).Handlers.Add((eventTypes, callback));
        }
    }

    /// <inheritdoc/>
    protected override void RemoveCallbackForPinValueChangedEvent(int pinNumber, PinChangeEventHandler callback)
    {
        lock (_lock)
        {
            Opened(pinNumber).Handlers.RemoveAll(entry => entry.Handler == callback);
        }
    }

    /// <inheritdoc/>
    protected override WaitForEventResult WaitForEvent(int pinNumber, PinEventTypes eventTypes, CancellationToken cancellationToken)
    {
        using ManualResetEventSlim happened = new();
        PinEventTypes edge = PinEventTypes.None;
        void Note(object sender, PinValueChangedEventArgs change)
        {
            edge = change.ChangeType;
            happened.Set();
        }

        AddCallbackForPinValueChangedEvent(pinNumber, eventTypes, Note);
        try
        {
            happened.Wait(cancellationToken);
            return new WaitForEventResult { EventTypes = edge, TimedOut = false };
        }
        catch (OperationCanceledException)
        {
            return new WaitForEventResult { EventTypes = PinEventTypes.None, TimedOut = true };
        }
        finally
        {
            RemoveCallbackForPinValueChangedEvent(pinNumber, Note);
        }
    }

    private static int Checked(int pin) => pin is >= 0 and < Pins
        ? pin
        : throw new ArgumentOutOfRangeException(nameof(pin), pin, $"GPIO {pin} does not exist; the pins are 0 to {Pins - 1}.");

    private VirtualPin Opened(int pin) =>
        _open[Checked(pin)] ?? throw new InvalidOperationException($"GPIO {pin} is not open.");

    private PinValue Seen(int pin) =>
        _outsideSource[pin]?.Invoke() ?? _outside[pin] ?? (_open[pin]?.Mode == PinMode.InputPullUp ? PinValue.High : PinValue.Low);

    private PinChange? Drive(int pin, PinValue? value)
    {
        VirtualPin open = Opened(pin);
        if (open.Level == value)
        {
            return null;
        }

        open.Level = value;
        PinChange change = new(time.GetUtcNow(), pin, value);
        _changes.Enqueue(change);
        if (_changes.Count > Remembered)
        {
            _changes.Dequeue();
        }

        return change;
    }

    private void Announce(PinChange? change)
    {
        if (change is { } known)
        {
            OutputChanged?.Invoke(known);
        }
    }
}
