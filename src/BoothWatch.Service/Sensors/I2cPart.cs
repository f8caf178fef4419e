using System.Device.I2c;
using System.Globalization;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors;

/// <summary>What all parts on I²C have in common: source, bus and address.</summary>
/// <param name="id">Name in the configuration.</param>
/// <param name="addresses">The addresses that the part can have, the usual one first.</param>
/// <param name="roles">The roles it can fill.</param>
public abstract class I2cPart(string id, IReadOnlyList<int> addresses, IReadOnlyList<SensorRole> roles) : ISensorPart
{
    private const int HighestBus = 255;

    /// <inheritdoc/>
    public string Id => id;

    /// <inheritdoc/>
    public IReadOnlyList<SensorRole> Roles => roles;

    /// <summary>The addresses at which the part is looked for: those that it has without being rewritten.</summary>
    public virtual IReadOnlyList<int> UsualAddresses => addresses;

    /// <inheritdoc/>
    public virtual bool GivesPressure(SensorOptions options) => false;

    /// <inheritdoc/>
    public virtual void Check(string key, SensorOptions options, ICollection<string> errors)
    {
        if (options.Bus is < 0 or > HighestBus)
        {
            errors.Add($"{key}:bus is {options.Bus}; give the number n of /dev/i2c-n, from 0 to {HighestBus}, for example 1");
        }

        if (AddressOf(options) is not { } address || !addresses.Contains(address))
        {
            errors.Add($"{key}:address is {options.Address}; {Id} can be at {string.Join(" or ", addresses.Select(Hex))}, for example \"{Hex(addresses[0])}\"");
        }
    }

    /// <inheritdoc/>
    public ISensor Create(SensorRole role, SensorOptions options, SensorWiring wiring)
    {
        SignalSource source = SignalSourceWord.Parse(options.Source) ?? SignalSource.Emulated;
        I2cPlace place = new(role.Name, source, options.Bus, AddressOf(options) ?? addresses[0]);
        if (source == SignalSource.Emulated)
        {
            EmulatedChip chip = Emulate(role, options, wiring);
            chip.Fault = () => wiring.Shop.FaultOf(role);
            wiring.Buses.Emulated(place.Bus).Attach(place.Address, chip);
        }

        return Create(role, options, place, wiring);
    }

    /// <summary>
    /// Asks whether it is this part that answers, by reading what identifies it. Nothing is configured, reset or started, and nothing is
    /// written but the number of a register or the command to read an identity: the device may be another one altogether.
    /// </summary>
    /// <param name="device">The device at one of <see cref="UsualAddresses"/>, opened for this question.</param>
    /// <returns>True when the answer is that of this part; false when something else answers.</returns>
    /// <exception cref="IOException">Nothing acknowledges the question.</exception>
    public abstract bool Recognises(I2cDevice device);

    /// <summary>The address that the options give, or the usual one; null when they give something that is none.</summary>
    internal int? AddressOf(SensorOptions options) => options.Address is null
        ? addresses[0]
        : options.Address.StartsWith("0x", StringComparison.OrdinalIgnoreCase)
            && int.TryParse(options.Address.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out int address)
            ? address
            : null;

    /// <summary>The chip that stands in for a real one.</summary>
    protected abstract EmulatedChip Emulate(SensorRole role, SensorOptions options, SensorWiring wiring);

    /// <summary>The sensor at a place.</summary>
    protected abstract ISensor Create(SensorRole role, SensorOptions options, I2cPlace place, SensorWiring wiring);

    private static string Hex(int address) => string.Create(CultureInfo.InvariantCulture, $"0x{address:X2}");
}
