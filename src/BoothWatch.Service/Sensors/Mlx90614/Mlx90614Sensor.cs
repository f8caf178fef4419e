using System.Collections.Immutable;
using System.Device.I2c;
using BoothWatch.Readings;
using Binding = Iot.Device.Mlx90614.Mlx90614;

namespace BoothWatch.Service.Sensors.Mlx90614;

/// <summary>Surface temperature of the piece by an MLX90614 infrared thermometer.</summary>
/// <param name="role">What it is for.</param>
/// <param name="place">Where it is.</param>
/// <param name="buses">Where its bus is opened.</param>
/// <remarks>
/// Source of the tolerance: Melexis, MLX90614 data sheet 3901090614 revision 13, features: ±0.5 °C from 0 to 50 °C. A
/// further ±0.25 °C stands for emissivity: wood and lacquer have about 0.9 to 0.95 where the part assumes 1, and the walls
/// that they mirror differ from the piece by up to 5 °C (common practice, no source). Bare metal cannot be measured so.
/// </remarks>
public sealed class Mlx90614Sensor(SensorRole role, I2cPlace place, I2cBusSource buses) : I2cSensor<Binding>(place, buses)
{
    /// <summary>The address that the part has from the factory, 0x5A.</summary>
    public const int DefaultAddress = Binding.DefaultI2cAddress;

    private static readonly double UncertaintyC = Uncertainty.FromTolerances(0.5, 0.25);

    private readonly int _address = place.Address;

    /// <inheritdoc/>
    public override IReadOnlyList<Quantity> Quantities { get; } = [role.Temperature!.Value];

    /// <inheritdoc/>
    protected override string PartName => "MLX90614";

    /// <inheritdoc/>
    protected override AnswerCheck CreateCheck() => new Mlx90614AnswerCheck(_address);

    /// <inheritdoc/>
    protected override Binding CreateBinding(I2cDevice device) => new(device);

    /// <inheritdoc/>
    protected override ImmutableArray<Sample> Measure(Binding binding) =>
        [new Sample(Quantities[0], binding.ReadObjectTemperature().DegreesCelsius, UncertaintyC)];
}
