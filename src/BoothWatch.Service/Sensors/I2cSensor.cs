using System.Collections.Immutable;
using System.Device.I2c;
using System.Globalization;
using BoothWatch.Readings;

namespace BoothWatch.Service.Sensors;

/// <summary>
/// A sensor behind a device binding on an I²C bus. The device is opened when it is first read and again after
/// every failure, so a part that is plugged in later, or was without power, comes back by itself.
/// </summary>
/// <typeparam name="TBinding">The binding that drives the part.</typeparam>
/// <param name="place">Name, source, bus and address.</param>
/// <param name="buses">Where the device is opened.</param>
public abstract class I2cSensor<TBinding>(I2cPlace place, I2cBusSource buses) : ISensor
    where TBinding : class, IDisposable
{
    private ObservedI2cDevice? _device;
    private TBinding? _binding;

    /// <inheritdoc/>
    public string Name => place.Name;

    /// <inheritdoc/>
    public string Description => string.Create(
        CultureInfo.InvariantCulture,
        $"{PartName} at 0x{place.Address:X2} on bus {place.Bus}{(IsEmulated ? " (emulated)" : "")}");

    /// <inheritdoc/>
    public bool IsEmulated => place.Source == SignalSource.Emulated;

    /// <inheritdoc/>
    public abstract IReadOnlyList<Quantity> Quantities { get; }

    /// <summary>Name of the part, for people.</summary>
    protected abstract string PartName { get; }

    /// <inheritdoc/>
    public SensorAnswer Read()
    {
        try
        {
            Open();
            ImmutableArray<Sample> samples = Measure(_binding!);
            Sample? notFinite = samples.FirstOrDefault(sample => !double.IsFinite(sample.Value));
            return notFinite is null
                ? SensorAnswer.Of(samples.AsSpan())
                : Failed($"{notFinite.Quantity} came out as {notFinite.Value}");
        }
        catch (Exception failure) when (failure is IOException or TimeoutException or InvalidDataException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return Failed(_device is null
                ? $"bus {place.Bus} cannot be opened ({failure.Message.TrimEnd('.')}); enable it, or correct sensors:{Name}:bus"
                : failure.Message);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Close();
        GC.SuppressFinalize(this);
    }

    /// <summary>A fresh check of the raw bytes of this part.</summary>
    protected abstract AnswerCheck CreateCheck();

    /// <summary>Starts the binding on a device just opened. May talk to the part.</summary>
    protected abstract TBinding CreateBinding(I2cDevice device);

    /// <summary>Takes one measurement. What the check finds wrong ends it with an exception.</summary>
    protected abstract ImmutableArray<Sample> Measure(TBinding binding);

    private void Open()
    {
        if (_binding is not null)
        {
            return;
        }

        _device = new ObservedI2cDevice(buses.Open(place.Source, place.Bus, place.Address), CreateCheck());
        _binding = CreateBinding(_device);
    }

    private SensorAnswer Failed(string cause)
    {
        Close();
        return SensorAnswer.NoReading(cause);
    }

    private void Close()
    {
        // Not through the binding: the Dispose of some talks to the part, which may be the one that does not answer.
        _device?.Dispose();
        _device = null;
        _binding = null;
    }
}
