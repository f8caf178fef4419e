using System.Device.Gpio;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.Mlx90614;
using BoothWatch.Service.Sensors.Sht4x;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Setup;

/// <summary>
/// What a service takes for the board that it runs on: bus 1 with an SHT4x and an MLX90614 of constant readings, and GPIO pins. The chips
/// answer register by register, so that the device bindings of the real parts run.
/// </summary>
public sealed class FakeBoard
{
    private readonly Dictionary<int, EmulatedChip> _chips = new()
    {
        [0x44] = new EmulatedSht4x(() => new AirSignal(21, 50, 101_300), TimeProvider.System, 1),
        [Mlx90614Sensor.DefaultAddress] = new EmulatedMlx90614(() => 20, () => 21, Mlx90614Sensor.DefaultAddress, 1),
    };

    public VirtualGpioDriver Pins { get; } = new(TimeProvider.System);

    public void Fit(int address, EmulatedChip chip) => _chips[address] = chip;

    /// <summary>Each service has a bus of its own with the same chips on it, as a program that starts opens the bus anew.</summary>
    public void Register(IServiceCollection services)
    {
        EmulatedI2cBus bus = new(1);
        foreach ((int address, EmulatedChip chip) in _chips)
        {
            bus.Attach(address, chip);
        }

        services.AddSingleton(new I2cBusSource(number => number == 1 ? bus : null));
        services.AddSingleton(_ => new GpioSource(TimeProvider.System, () => new GpioController(Pins)));
    }
}
