using System.Collections.Immutable;
using System.Device.I2c;
using BoothWatch.Readings;
using Iot.Device.Bmxx80.ReadResult;
using Binding = Iot.Device.Bmxx80.Bme280;

namespace BoothWatch.Service.Sensors.Bme280;

/// <summary>Air temperature and humidity, and the station pressure, by a BME280.</summary>
/// <param name="role">What it is for.</param>
/// <param name="place">Where it is.</param>
/// <param name="buses">Where its bus is opened.</param>
/// <param name="givesPressure">Whether it provides the station pressure as well.</param>
/// <remarks>
/// The data sheet (Bosch, BST-BME280-DS002-15, table 2, and tables 3 and 4 from memory) gives typical figures and no limits:
/// ±3 %RH with hysteresis, from 20 to 80 %RH at 25 °C, ±1 hPa, ±1.0 °C from 0 to 65 °C. Limits, as GUM 4.3.7 wants them, are
/// taken as one and a half times those (assumed), and a further ±1 %RH stands for damper air (assumed).
/// </remarks>
public sealed class Bme280Sensor(SensorRole role, I2cPlace place, I2cBusSource buses, bool givesPressure) : I2cSensor<Binding>(place, buses)
{
    /// <summary>The address with the SDO pin low, 0x76; it is 0x77 with the pin high.</summary>
    public const int DefaultAddress = Iot.Device.Bmxx80.Bmx280Base.SecondaryI2cAddress;

    private static readonly double HumidityUncertaintyPct = Uncertainty.FromTolerances(4.5, 1);
    private static readonly double TemperatureUncertaintyC = Uncertainty.FromTolerances(1.5);
    private static readonly double PressureUncertaintyPa = Uncertainty.FromTolerances(150);

    /// <inheritdoc/>
    public override IReadOnlyList<Quantity> Quantities { get; } = givesPressure
        ? [role.Temperature!.Value, role.Humidity!.Value, Quantity.StationPressure]
        : [role.Temperature!.Value, role.Humidity!.Value];

    /// <inheritdoc/>
    protected override string PartName => "BME280";

    /// <inheritdoc/>
    protected override AnswerCheck CreateCheck() => new Bme280AnswerCheck();

    /// <inheritdoc/>
    protected override Binding CreateBinding(I2cDevice device) => new(device);

    /// <inheritdoc/>
    protected override ImmutableArray<Sample> Measure(Binding binding)
    {
        Bme280ReadResult result = binding.Read();
        ImmutableArray<Sample> air =
        [
            new Sample(Quantities[0], result.Temperature?.DegreesCelsius ?? double.NaN, TemperatureUncertaintyC),
            new Sample(Quantities[1], result.Humidity?.Percent ?? double.NaN, HumidityUncertaintyPct),
        ];
        return givesPressure
            ? air.Add(new Sample(Quantity.StationPressure, result.Pressure?.Pascals ?? double.NaN, PressureUncertaintyPa))
            : air;
    }
}
