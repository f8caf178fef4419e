using System.Device.I2c;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors;

/// <summary>Gives the I²C buses of the board and the emulated ones. Each bus is opened once, when first needed.</summary>
/// <param name="board">Opens a bus of the board, and gives null where it has none of that number; null: the buses of this machine.</param>
public sealed class I2cBusSource(Func<int, I2cBus?>? board = null) : IDisposable
{
    private readonly Lock _lock = new();
    private readonly Dictionary<int, I2cBus> _real = [];
    private readonly Dictionary<int, EmulatedI2cBus> _emulated = [];

    /// <summary>Opens a device on a bus. Dispose it before opening the same address again.</summary>
    /// <exception cref="IOException">The bus of the board cannot be opened.</exception>
    public I2cDevice Open(SignalSource source, int bus, int address)
    {
        lock (_lock)
        {
            if (source == SignalSource.Emulated)
            {
                return Emulated(bus).CreateDevice(address);
            }

            if (!_real.TryGetValue(bus, out I2cBus? opened))
            {
                _real[bus] = opened = Real(bus);
            }

            return opened.CreateDevice(address);
        }
    }

    /// <summary>The emulated bus of a number, to put chips on.</summary>
    public EmulatedI2cBus Emulated(int bus)
    {
        lock (_lock)
        {
            if (!_emulated.TryGetValue(bus, out EmulatedI2cBus? emulated))
            {
                _emulated[bus] = emulated = new EmulatedI2cBus(bus);
            }

            return emulated;
        }
    }

    /// <summary>
    /// A bus for a look around, apart from the one that the sensors use. A real one is opened a second time, so that nothing is shared with
    /// the sensors but the adapter in the kernel, which carries out one transfer at a time; the caller disposes it. An emulated one is the same.
    /// </summary>
    /// <exception cref="IOException">The bus of the board cannot be opened.</exception>
    internal I2cBus Apart(SignalSource source, int bus) => source == SignalSource.Real ? Real(bus) : Emulated(bus);

    /// <summary>Whether the board has a bus of this number.</summary>
    internal bool IsOnBoard(int bus) => board is null ? File.Exists($"/dev/i2c-{bus}") : board(bus) is not null;

    /// <summary>Closes every bus.</summary>
    public void Dispose()
    {
        lock (_lock)
        {
            foreach (I2cBus bus in _real.Values)
            {
                bus.Dispose();
            }

            _real.Clear();
            _emulated.Clear();
        }
    }

    private I2cBus Real(int bus) => board is null ? I2cBus.Create(bus)
        : board(bus) ?? throw new IOException($"the board has no bus {bus}");
}
