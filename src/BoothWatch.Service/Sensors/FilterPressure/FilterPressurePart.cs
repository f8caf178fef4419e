using System.Device.I2c;
using System.Globalization;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.FilterPressure;

/// <summary>The pressure transmitter on an ADS1115 in the configuration.</summary>
public sealed class FilterPressurePart() : I2cPart("ads1115-pressure", [FilterPressureSensor.DefaultAddress, 0x49, 0x4A, 0x4B], [SensorRole.Filter])
{
    private const int HighestChannel = 3;
    private const byte LowThreshold = 2;
    private const byte HighThreshold = 3;

    /// <inheritdoc/>
    public override void Check(string key, SensorOptions options, ICollection<string> errors)
    {
        base.Check(key, options, errors);
        if (options.Channel is < 0 or > HighestChannel)
        {
            errors.Add($"{key}:channel is {options.Channel}; give the analog input from 0 to {HighestChannel}, for example 0");
        }

        Range("fullScalePa", options.FullScalePa, 10, 10_000, "Pa", "250");
        Range("zeroV", options.ZeroV, 0, 5, "V", "0.5");
        Range("dividerRatio", options.DividerRatio, 0.1, 1, "(share of the voltage)", "1");
        if (!(options.FullScaleV > options.ZeroV && options.FullScaleV <= 10))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture, $"{key}:fullScaleV is {options.FullScaleV}; give V above zeroV ({options.ZeroV}) and at most 10, for example 4.5"));
        }

        void Range(string setting, double value, double lowest, double highest, string unit, string example)
        {
            if (!(value >= lowest && value <= highest))
            {
                errors.Add(string.Create(CultureInfo.InvariantCulture, $"{key}:{setting} is {value}; give {unit} from {lowest} to {highest}, for example {example}"));
            }
        }
    }

    /// <inheritdoc/>
    /// <remarks>
    /// The ADS1115 sends nothing that identifies it. Its threshold registers hold 0x8000 and 0x7FFF after power-on, and the binding
    /// leaves them so. Source: Texas Instruments, ADS1115 data sheet SBAS444, section on the threshold registers.
    /// </remarks>
    public override bool Recognises(I2cDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        Span<byte> low = stackalloc byte[2];
        Span<byte> high = stackalloc byte[2];
        device.WriteRead([LowThreshold], low);
        device.WriteRead([HighThreshold], high);
        return low.SequenceEqual<byte>([0x80, 0x00]) && high.SequenceEqual<byte>([0x7F, 0xFF]);
    }

    /// <inheritdoc/>
    protected override EmulatedChip Emulate(SensorRole role, SensorOptions options, SensorWiring wiring)
    {
        PressureTransmitter transmitter = TransmitterOf(options);
        return new EmulatedAds1115(
            input => input == options.Channel ? transmitter.Volts(wiring.Shop.Now().FilterPressureDropPa) * options.DividerRatio : 0,
            SensorWiring.ConversionClock,
            wiring.Shop.SeedOf(role));
    }

    /// <inheritdoc/>
    protected override ISensor Create(SensorRole role, SensorOptions options, I2cPlace place, SensorWiring wiring) =>
        new FilterPressureSensor(place, wiring.Buses, TransmitterOf(options), options.Channel, options.DividerRatio);

    private static PressureTransmitter TransmitterOf(SensorOptions options) =>
        new(options.ZeroV, options.FullScaleV, options.FullScalePa);
}
