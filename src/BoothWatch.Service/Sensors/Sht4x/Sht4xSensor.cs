using System.Collections.Immutable;
using System.Device.I2c;
using BoothWatch.Readings;
using Iot.Device.Sht4x;
using Binding = Iot.Device.Sht4x.Sht4x;

namespace BoothWatch.Service.Sensors.Sht4x;

/// <summary>Air temperature and humidity by an SHT40, SHT41 or SHT45.</summary>
/// <param name="role">What it is for.</param>
/// <param name="place">Where it is.</param>
/// <param name="buses">Where its bus is opened.</param>
/// <remarks>
/// Limits, as GUM 4.3.7 wants them, and not the typical ±1.8 %RH and ±0.2 °C, for the SHT40, the least accurate of the family:
/// at most ±3.5 %RH from 10 to 90 %RH with 0.8 %RH of hysteresis, and ±0.4 °C from 10 to 60 °C. Source: Sensirion, Datasheet
/// SHT4x version 6, tables 1 and 2 (typical, hysteresis) and the figures of the largest tolerances (from memory).
/// </remarks>
public sealed class Sht4xSensor(SensorRole role, I2cPlace place, I2cBusSource buses) : I2cSensor<Binding>(place, buses)
{
    /// <summary>The address of most of the family, 0x44.</summary>
    public const int DefaultAddress = Binding.DefaultI2cAddress;

    private static readonly double HumidityUncertaintyPct = Uncertainty.FromTolerances(3.5, 0.8);
    private static readonly double TemperatureUncertaintyC = Uncertainty.FromTolerances(0.4);

    /// <inheritdoc/>
    public override IReadOnlyList<Quantity> Quantities { get; } = [role.Temperature!.Value, role.Humidity!.Value];

    /// <inheritdoc/>
    protected override string PartName => "SHT4x";

    /// <inheritdoc/>
    protected override AnswerCheck CreateCheck() => new ShtAnswerCheck();

    /// <inheritdoc/>
    protected override Binding CreateBinding(I2cDevice device) => new(device);

    /// <inheritdoc/>
    protected override ImmutableArray<Sample> Measure(Binding binding)
    {
        (UnitsNet.RelativeHumidity? humidity, UnitsNet.Temperature? temperature) = binding.ReadHumidityAndTemperature(Sht4xRepeatability.High);
        return
        [
            new Sample(Quantities[0], temperature?.DegreesCelsius ?? double.NaN, TemperatureUncertaintyC),
            new Sample(Quantities[1], humidity?.Percent ?? double.NaN, HumidityUncertaintyPct),
        ];
    }
}
