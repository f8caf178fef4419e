namespace BoothWatch.Service.Sensors;

/// <summary>The configured sensors, one a role. The defaults are all emulated.</summary>
public sealed class SensorsOptions
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "sensors";

    /// <summary>The part of a role that is not fitted.</summary>
    public const string None = "none";

    /// <summary>Air in the booth. Default: an emulated SHT4x.</summary>
    public SensorOptions BoothAir { get; set; } = new() { Part = "sht4x" };

    /// <summary>Air at the intake or outdoors. Default: an emulated BME280, which also gives the station pressure.</summary>
    public SensorOptions IntakeAir { get; set; } = new() { Part = "bme280" };

    /// <summary>Surface of the piece. Default: an emulated MLX90614.</summary>
    public SensorOptions Piece { get; set; } = new() { Part = "mlx90614" };

    /// <summary>Proof that the exhaust moves air. Default: an emulated contact.</summary>
    public SensorOptions Exhaust { get; set; } = new() { Part = "contact" };

    /// <summary>Pressure drop across the filter. Default: an emulated transmitter on an ADS1115.</summary>
    public SensorOptions Filter { get; set; } = new() { Part = "ads1115-pressure" };

    /// <summary>Every role with its options.</summary>
    public IEnumerable<(SensorRole Role, SensorOptions Options)> All() =>
    [
        (SensorRole.BoothAir, BoothAir),
        (SensorRole.IntakeAir, IntakeAir),
        (SensorRole.Piece, Piece),
        (SensorRole.Exhaust, Exhaust),
        (SensorRole.Filter, Filter),
    ];
}
