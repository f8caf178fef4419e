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
/// <para>
/// Tolerance of the part: Melexis, MLX90614 data sheet 3901090614 revision 13, features: ±0.5 °C from 0 to 50 °C.
/// </para>
/// <para>
/// Emissivity: wood and lacquer have 0.9 or more where the part assumes 1, so up to a tenth of what it sees is the
/// surroundings, and the reading is off by up to a tenth of the difference between them and the piece (Stefan and Boltzmann's law,
/// linear for small differences). The surroundings are taken to be within 5 °C of the part's own temperature, which it measures
/// (assumed): ±0.5 °C where piece and part are equally warm, and 0.1 °C more for each degree between them. Bare metal cannot be measured so.
/// </para>
/// </remarks>
public sealed class Mlx90614Sensor(SensorRole role, I2cPlace place, I2cBusSource buses) : I2cSensor<Binding>(place, buses)
{
    /// <summary>The address that the part has from the factory, 0x5A.</summary>
    public const int DefaultAddress = Binding.DefaultI2cAddress;

    private const double PartToleranceC = 0.5;
    private const double HighestReflectance = 0.1;
    private const double SurroundingsWithinC = 5;

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
    protected override ImmutableArray<Sample> Measure(Binding binding)
    {
        double pieceC = binding.ReadObjectTemperature().DegreesCelsius;
        double partC = binding.ReadAmbientTemperature().DegreesCelsius;
        double emissivityC = HighestReflectance * (SurroundingsWithinC + Math.Abs(pieceC - partC));
        return [new Sample(Quantities[0], pieceC, Uncertainty.FromTolerances(PartToleranceC, emissivityC))];
    }
}
