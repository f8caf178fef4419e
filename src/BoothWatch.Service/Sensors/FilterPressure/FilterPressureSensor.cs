using System.Collections.Immutable;
using System.Device.I2c;
using BoothWatch.Readings;
using Iot.Device.Ads1115;

namespace BoothWatch.Service.Sensors.FilterPressure;

/// <summary>Pressure drop across the filter by a transmitter with a voltage output, read by an ADS1115.</summary>
/// <param name="place">Where the converter is.</param>
/// <param name="buses">Where its bus is opened.</param>
/// <param name="transmitter">The transmitter.</param>
/// <param name="channel">Analog input, 0 to 3.</param>
/// <param name="dividerRatio">Share of the transmitter's voltage that reaches the input.</param>
/// <remarks>
/// Tolerances: ±1.5 % of full scale for the transmitter (common for the class, no source; see your data sheet) and ±0.15 %
/// for the gain of the converter (Texas Instruments, ADS1115 data sheet SBAS444, from memory).
/// </remarks>
public sealed class FilterPressureSensor(
    I2cPlace place,
    I2cBusSource buses,
    PressureTransmitter transmitter,
    int channel,
    double dividerRatio) : I2cSensor<Ads1115>(place, buses)
{
    /// <summary>The address with the ADDR pin at ground, 0x48; it is 0x49 to 0x4B with the pin at VDD, SDA or SCL.</summary>
    public const int DefaultAddress = (int)I2cAddress.GND;

    private readonly double _uncertaintyPa = Uncertainty.FromTolerances(0.015 * transmitter.FullScalePa, 0.0015 * transmitter.FullScalePa);

    /// <inheritdoc/>
    public override IReadOnlyList<Quantity> Quantities { get; } = [Quantity.FilterPressureDrop];

    /// <inheritdoc/>
    protected override string PartName => "pressure transmitter on ADS1115";

    /// <inheritdoc/>
    protected override AnswerCheck CreateCheck() => new Ads1115AnswerCheck();

    /// <inheritdoc/>
    protected override Ads1115 CreateBinding(I2cDevice device) => new(
        device, InputMultiplexer.AIN0 + channel, MeasuringRange.FS6144, DataRate.SPS860, DeviceMode.PowerDown);

    /// <inheritdoc/>
    protected override ImmutableArray<Sample> Measure(Ads1115 binding) =>
        [new Sample(Quantity.FilterPressureDrop, transmitter.PressurePa(binding.ReadVoltage().Volts / dividerRatio), _uncertaintyPa)];
}
