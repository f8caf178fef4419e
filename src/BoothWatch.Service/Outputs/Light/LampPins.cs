using System.Device.Gpio;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>The pins of the light: opened when first needed, written only on change, and all off before any on.</summary>
/// <param name="controller">Gives the controller; asked again until it does.</param>
/// <param name="options">The wiring.</param>
/// <remarks>Not safe for several threads. It does not dispose the controller, which others share.</remarks>
internal sealed class LampPins(Func<GpioController> controller, LightOptions options)
{
    private readonly Dictionary<Lamp, bool> _written = [];
    private readonly HashSet<Lamp> _opened = [];
    private readonly HashSet<Lamp> _failed = [];

    /// <summary>
    /// Brings the pins to the wanted state, lamps that go off first. Every pin is tried, but once one has failed
    /// only red is still switched on.
    /// </summary>
    /// <param name="on">The lamps that shall be on; all others shall be off.</param>
    /// <param name="retryFailed">False leaves pins alone that failed last time.</param>
    /// <returns>What failed now, in words that name the pin; empty when nothing did.</returns>
    public IReadOnlyList<string> Write(IReadOnlySet<Lamp> on, bool retryFailed)
    {
        List<string> faults = [];
        foreach (Lamp lamp in Enum.GetValues<Lamp>().Where(Wired).OrderBy(on.Contains))
        {
            bool wanted = on.Contains(lamp) && (lamp == Lamp.Red || _failed.Count == 0);
            bool asWanted = _written.TryGetValue(lamp, out bool isOn) && isOn == wanted;
            if (asWanted || (_failed.Contains(lamp) && !retryFailed))
            {
                continue;
            }

            try
            {
                Write(lamp, wanted);
                _written[lamp] = wanted;
                _failed.Remove(lamp);
            }
            catch (Exception fault) when (IsGpioFault(fault))
            {
                faults.Add($"{lamp} on GPIO {PinOf(lamp)}: {GpioTrouble.Explain(fault)}");
                GiveUp(lamp);
            }
        }

        return faults;
    }

    // The controller hides two faults: a pin that another has opened is opened again without a word, and a write to a pin
    // that is no output any more only stores the level. So both are looked for.
    private void Write(Lamp lamp, bool on)
    {
        int pin = PinOf(lamp);
        PinValue level = on != options.ActiveLow ? PinValue.High : PinValue.Low;
        GpioController pins = controller();
        if (_opened.Contains(lamp))
        {
            pins.Write(pin, level);
        }
        else if (pins.IsPinOpen(pin))
        {
            throw new InvalidOperationException("the pin is in use by something else");
        }
        else
        {
            // With its level from the start, so that no lamp flashes while it is opened.
            _opened.Add(lamp);
            pins.OpenPin(pin, PinMode.Output, level);
        }

        if (pins.GetPinMode(pin) != PinMode.Output || pins.Read(pin) != level)
        {
            throw new IOException($"driven {level}, but it does not read so");
        }
    }

    // A pin that failed is closed, which leaves its relay without drive, and opened afresh at the next try.
    private void GiveUp(Lamp lamp)
    {
        _failed.Add(lamp);
        _written.Remove(lamp);
        if (!_opened.Remove(lamp))
        {
            return;
        }

        try
        {
            controller().ClosePin(PinOf(lamp));
        }
        catch (Exception fault) when (IsGpioFault(fault))
        {
            // It was the write that mattered, and that is reported.
        }
    }

    private bool Wired(Lamp lamp) => lamp != Lamp.Buzzer || options.BuzzerPin is not null;

    private int PinOf(Lamp lamp) => lamp switch
    {
        Lamp.Green => options.GreenPin,
        Lamp.Yellow => options.YellowPin,
        Lamp.Red => options.RedPin,
        _ => options.BuzzerPin ?? -1,
    };

    // What the GPIO bindings raise: no chip, no right, no library, a line in use, a driver error.
    private static bool IsGpioFault(Exception fault) => fault
        is IOException
        or UnauthorizedAccessException
        or InvalidOperationException
        or NotSupportedException
        or ArgumentException
        or DllNotFoundException
        or TypeInitializationException
        or System.ComponentModel.Win32Exception;
}
