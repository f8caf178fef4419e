using System.Device.Gpio;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.ContactInput;

/// <summary>The contact that proves the exhaust, in the configuration.</summary>
public sealed class ContactInputPart : ISensorPart
{
    /// <inheritdoc/>
    public string Id => "contact";

    /// <inheritdoc/>
    public IReadOnlyList<SensorRole> Roles { get; } = [SensorRole.Exhaust];

    /// <inheritdoc/>
    public int? PinOf(SensorOptions options) => options.Pin;

    /// <inheritdoc/>
    public void Check(string key, SensorOptions options, ICollection<string> errors)
    {
        if (options.Pin is < 0 or > GpioSource.HighestPin)
        {
            errors.Add($"{key}:pin is {options.Pin}; give a GPIO number from 0 to {GpioSource.HighestPin}, for example 23");
        }

        // A broken wire must read as "not proven": the pull resistor has to work against the contact.
        string safe = options.ActiveHigh ? "down" : "up";
        if (options.Pull is not null && options.Pull != safe && options.Pull != "none")
        {
            errors.Add($"{key}:pull is {options.Pull}; with activeHigh {(options.ActiveHigh ? "true" : "false")} give {safe}, or none with such a resistor outside, so that a broken wire reads as not proven");
        }
    }

    /// <inheritdoc/>
    public ISensor Create(SensorRole role, SensorOptions options, SensorWiring wiring)
    {
        SignalSource source = SignalSourceWord.Parse(options.Source) ?? SignalSource.Emulated;
        if (source == SignalSource.Emulated)
        {
            PinValue closed = options.ActiveHigh ? PinValue.High : PinValue.Low;
            PinValue open = !closed;
            wiring.Pins.Virtual.FollowInput(options.Pin, () =>
                wiring.Shop.Now().FanOn && wiring.Shop.FaultOf(role) == BusFault.None ? closed : open);
        }

        PinMode mode = options.Pull == "none" ? PinMode.Input
            : options.ActiveHigh ? PinMode.InputPullDown
            : PinMode.InputPullUp;
        return new ContactInputSensor(role.Name, source, options.Pin, options.ActiveHigh, mode, wiring.Pins);
    }
}
