using System.Device.I2c;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>An I²C bus without hardware. An address without a chip does not acknowledge.</summary>
/// <param name="number">Number of the bus.</param>
public sealed class EmulatedI2cBus(int number) : I2cBus
{
    private readonly Lock _lock = new();
    private readonly Dictionary<int, EmulatedChip> _chips = [];
    private readonly HashSet<int> _open = [];

    /// <summary>Puts a chip at an address, in place of any chip that was there.</summary>
    public void Attach(int address, EmulatedChip chip)
    {
        lock (_lock)
        {
            _chips[address] = chip;
        }
    }

    /// <summary>Takes the chip off an address.</summary>
    public void Detach(int address)
    {
        lock (_lock)
        {
            _chips.Remove(address);
        }
    }

    /// <summary>The chip at an address; null when there is none.</summary>
    public EmulatedChip? ChipAt(int address)
    {
        lock (_lock)
        {
            return _chips.GetValueOrDefault(address);
        }
    }

    /// <inheritdoc/>
    public override I2cDevice CreateDevice(int deviceAddress)
    {
        lock (_lock)
        {
            return _open.Add(deviceAddress)
                ? new EmulatedI2cDevice(this, new I2cConnectionSettings(number, deviceAddress))
                : throw new ArgumentException($"Address 0x{deviceAddress:X2} on bus {number} is already open.", nameof(deviceAddress));
        }
    }

    /// <inheritdoc/>
    public override void RemoveDevice(int deviceAddress)
    {
        lock (_lock)
        {
            _open.Remove(deviceAddress);
        }
    }
}
