using System.Device.Gpio;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors;

/// <summary>Gives the GPIO controller of the board or the virtual one. Each exists once and is shared by all who use pins.</summary>
/// <param name="time">Clock of the virtual pins.</param>
/// <param name="board">Opens the pins of the board; null: those of this machine.</param>
public sealed class GpioSource(TimeProvider time, Func<GpioController>? board = null) : IDisposable
{
    /// <summary>Highest GPIO number that may be given, as on the common single-board computers.</summary>
    public const int HighestPin = 53;

    private readonly Lock _lock = new();
    private GpioController? _real;
    private GpioController? _emulated;

    /// <summary>The pins behind the emulated controller, to look at outputs and to set inputs.</summary>
    public VirtualGpioDriver Virtual { get; } = new(time);

    /// <summary>The controller of a source. Owned here: close your pins, but do not dispose it.</summary>
    /// <exception cref="PlatformNotSupportedException">Real pins are asked for on a machine that has none.</exception>
    /// <exception cref="IOException">The GPIO device cannot be opened.</exception>
    public GpioController Controller(SignalSource source)
    {
        lock (_lock)
        {
            return source == SignalSource.Real
                ? _real ??= board?.Invoke() ?? new GpioController()
                : _emulated ??= new GpioController(Virtual);
        }
    }

    /// <summary>Closes all pins of both controllers.</summary>
    public void Dispose()
    {
        lock (_lock)
        {
            _real?.Dispose();
            _emulated?.Dispose();
            (_real, _emulated) = (null, null);
        }
    }
}
