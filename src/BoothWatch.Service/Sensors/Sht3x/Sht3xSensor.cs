using System.Collections.Immutable;
using System.Device.I2c;
using BoothWatch.Readings;
using Iot.Device.Sht3x;
using Binding = Iot.Device.Sht3x.Sht3x;

namespace BoothWatch.Service.Sensors.Sht3x;

/// <summary>Air temperature and humidity by an SHT30, SHT31 or SHT35.</summary>
/// <param name="role">What it is for.</param>
/// <param name="place">Where it is.</param>
/// <param name="buses">Where its bus is opened.</param>
/// <remarks>
/// <para>
/// The binding has no combined read: each of its getters measures again, rounds to a tenth, and answers 0.0 after a bad
/// CRC. So one getter starts one measurement, and both values are computed from the checked words of its answer.
/// </para>
/// <para>
/// Limits, as GUM 4.3.7 wants them, and not the typical ±3 %RH (±2 in newer issues) and ±0.2 °C, for the SHT30, the least
/// accurate of the family: at most ±4 %RH from 10 to 90 %RH with 0.8 %RH of hysteresis, and ±0.4 °C from 0 to 60 °C. Source:
/// Sensirion, Datasheet SHT3x-DIS version 5, tables 1 and 2 (typical, hysteresis) and the figures of the largest tolerances (from memory).
/// </para>
/// </remarks>
public sealed class Sht3xSensor(SensorRole role, I2cPlace place, I2cBusSource buses) : I2cSensor<Binding>(place, buses)
{
    /// <summary>The address with the ADDR pin low; it is 0x45 with the pin high.</summary>
    public const int DefaultAddress = (int)I2cAddress.AddrLow;

    private const double FullScale = 65535;

    private static readonly double HumidityUncertaintyPct = Uncertainty.FromTolerances(4.0, 0.8);
    private static readonly double TemperatureUncertaintyC = Uncertainty.FromTolerances(0.4);

    private ShtAnswerCheck _check = new();

    /// <inheritdoc/>
    public override IReadOnlyList<Quantity> Quantities { get; } = [role.Temperature!.Value, role.Humidity!.Value];

    /// <inheritdoc/>
    protected override string PartName => "SHT3x";

    /// <inheritdoc/>
    protected override AnswerCheck CreateCheck() => _check = new ShtAnswerCheck();

    /// <inheritdoc/>
    protected override Binding CreateBinding(I2cDevice device) => new(device, Resolution.High);

    /// <inheritdoc/>
    protected override ImmutableArray<Sample> Measure(Binding binding)
    {
        _ = binding.Temperature;
        return
        [
            new Sample(Quantities[0], (175 * _check.TemperatureWord / FullScale) - 45, TemperatureUncertaintyC),
            new Sample(Quantities[1], 100 * _check.HumidityWord / FullScale, HumidityUncertaintyPct),
        ];
    }
}
