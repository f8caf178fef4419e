using System.Device.Gpio;
using System.Globalization;
using BoothWatch.Readings;

namespace BoothWatch.Service.Sensors.ContactInput;

/// <summary>Proof of exhaust by a contact at a GPIO input: a sail switch in the duct, or a relay across the fan motor.</summary>
/// <param name="name">Configured name.</param>
/// <param name="source">Real or emulated pin.</param>
/// <param name="pin">GPIO number.</param>
/// <param name="activeHigh">True when the pin is high while the exhaust is proven.</param>
/// <param name="mode">Input mode with its pull resistor.</param>
/// <param name="pins">Where the pin is opened.</param>
public sealed class ContactInputSensor(string name, SignalSource source, int pin, bool activeHigh, PinMode mode, GpioSource pins) : ISensor
{
    private GpioController? _controller;

    /// <inheritdoc/>
    public string Name => name;

    /// <inheritdoc/>
    public string Description => string.Create(
        CultureInfo.InvariantCulture,
        $"contact at GPIO {pin}, proven when {(activeHigh ? "high" : "low")}{(IsEmulated ? " (emulated)" : "")}");

    /// <inheritdoc/>
    public bool IsEmulated => source == SignalSource.Emulated;

    /// <inheritdoc/>
    public IReadOnlyList<Quantity> Quantities { get; } = [Quantity.ExhaustProof];

    /// <inheritdoc/>
    public SensorAnswer Read()
    {
        try
        {
            _controller ??= Open();
            bool proven = (_controller.Read(pin) == PinValue.High) == activeHigh;
            return SensorAnswer.Of(new Sample(Quantity.ExhaustProof, proven ? 1 : 0, 0));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException or InvalidOperationException or ArgumentException or DllNotFoundException)
        {
            Dispose();
            return SensorAnswer.NoReading($"GPIO {pin} cannot be read: {GpioTrouble.Explain(failure)}");
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_controller?.IsPinOpen(pin) == true)
        {
            _controller.ClosePin(pin);
        }

        _controller = null;
    }

    private GpioController Open()
    {
        // An open pin would be handed out again in silence, and what another drives there would become an input.
        GpioController controller = pins.Controller(source);
        if (controller.IsPinOpen(pin))
        {
            throw new InvalidOperationException($"it is in use for something else; give sensors:{name}:pin another one");
        }

        controller.OpenPin(pin, mode);
        return controller;
    }
}
