using BoothWatch.Readings;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Bme280;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.FilterPressure;
using BoothWatch.Service.Sensors.Mlx90614;
using BoothWatch.Service.Sensors.Sht3x;
using BoothWatch.Service.Sensors.Sht4x;

namespace BoothWatch.Service.Tests.Sensors;

/// <summary>One part on an emulated bus, driven by its real binding, with true values and a fault that the test sets.</summary>
public sealed class Bench : IDisposable
{
    public const double PieceC = 17.5;
    public const double FilterPa = 80;

    private readonly I2cBusSource _buses = new();

    private Bench(string part)
    {
        SensorRole role = SensorRole.BoothAir;
        I2cPlace place = new("tested", SignalSource.Emulated, 1, part switch
        {
            "sht4x" => Sht4xSensor.DefaultAddress,
            "sht3x" => Sht3xSensor.DefaultAddress,
            "bme280" => Bme280Sensor.DefaultAddress,
            "mlx90614" => Mlx90614Sensor.DefaultAddress,
            _ => FilterPressureSensor.DefaultAddress,
        });
        PressureTransmitter transmitter = new(0.5, 4.5, 250);
        TimeProvider time = TimeProvider.System;
        (Chip, Sensor) = part switch
        {
            "sht4x" => ((EmulatedChip)new EmulatedSht4x(() => Air, time, 1), (ISensor)new Sht4xSensor(role, place, _buses)),
            "sht3x" => (new EmulatedSht3x(() => Air, time, 1), new Sht3xSensor(role, place, _buses)),
            "bme280" => (new EmulatedBme280(() => Air, time, 1), new Bme280Sensor(role, place, _buses, true)),
            "mlx90614" => (new EmulatedMlx90614(() => PieceC, () => Air.TemperatureC, place.Address, 1), new Mlx90614Sensor(SensorRole.Piece, place, _buses)),
            "ads1115-pressure" => (
                new EmulatedAds1115(input => input == 2 ? TransmitterV ?? transmitter.Volts(FilterPa) : 0, time, 1),
                new FilterPressureSensor(place, _buses, transmitter, 2, 1)),
            _ => throw new ArgumentOutOfRangeException(nameof(part), part, "unknown part"),
        };
        Chip.Fault = () => Fault;
        Address = place.Address;
        Plug();
    }

    public static TheoryData<string> Parts => ["sht4x", "sht3x", "bme280", "mlx90614", "ads1115-pressure"];

    public ISensor Sensor { get; }

    public EmulatedChip Chip { get; }

    public int Address { get; }

    public BusFault Fault { get; set; }

    public AirSignal Air { get; set; } = new(21.3, 47.6, 101_250);

    public double? TransmitterV { get; set; }

    public EmulatedI2cBus Bus => _buses.Emulated(1);

    public static Bench With(string part) => new(part);

    public void Plug() => Bus.Attach(Address, Chip);

    public double Value(Quantity quantity)
    {
        SensorAnswer answer = Sensor.Read();
        Assert.Null(answer.NoReadingCause);
        return Assert.Single(answer.Samples, sample => sample.Quantity == quantity).Value;
    }

    public string Cause()
    {
        SensorAnswer answer = Sensor.Read();
        Assert.Empty(answer.Samples);
        return Assert.IsType<string>(answer.NoReadingCause);
    }

    public void Dispose()
    {
        Sensor.Dispose();
        _buses.Dispose();
    }
}
