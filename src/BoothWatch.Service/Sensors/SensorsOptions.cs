namespace BoothWatch.Service.Sensors;

/// <summary>The configured sensors, one a role; the booth air may have a second part, as a check of the first. The defaults are all emulated.</summary>
public sealed class SensorsOptions
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "sensors";

    /// <summary>The part of a role that is not fitted.</summary>
    public const string None = "none";

    /// <summary>Air in the booth. Default: an emulated SHT4x.</summary>
    public SensorOptions BoothAir { get; set; } = new() { Part = "sht4x" };

    /// <summary>A second part beside the first in the booth air. Default: not fitted.</summary>
    public SensorOptions BoothAirCheck { get; set; } = new();

    /// <summary>Air at the intake or outdoors. Default: an emulated BME280, which also gives the station pressure.</summary>
    public SensorOptions IntakeAir { get; set; } = new() { Part = "bme280" };

    /// <summary>Surface of the piece. Default: an emulated MLX90614.</summary>
    public SensorOptions Piece { get; set; } = new() { Part = "mlx90614" };

    /// <summary>Proof that the exhaust moves air. Default: an emulated contact.</summary>
    public SensorOptions Exhaust { get; set; } = new() { Part = "contact" };

    /// <summary>Pressure drop across the filter. Default: an emulated transmitter on an ADS1115.</summary>
    public SensorOptions Filter { get; set; } = new() { Part = "ads1115-pressure" };

    /// <summary>
    /// True while parts are proved one at a time: real and emulated ones may then stand side by side, and the verdict stays at wait.
    /// Default false: an emulated part beside a real one is an error, since its script would pass for the booth.
    /// </summary>
    public bool Proving { get; set; }

    /// <summary>Every role with its options.</summary>
    public IEnumerable<(SensorRole Role, SensorOptions Options)> All() =>
    [
        (SensorRole.BoothAir, BoothAir),
        (SensorRole.BoothAirCheck, BoothAirCheck),
        (SensorRole.IntakeAir, IntakeAir),
        (SensorRole.Piece, Piece),
        (SensorRole.Exhaust, Exhaust),
        (SensorRole.Filter, Filter),
    ];

    /// <summary>The keys of the fitted sensors that are emulated (true) or real (false); a part that does not exist, or a source that is none, is neither.</summary>
    internal string[] KeysWhere(bool emulated) =>
    [
        .. All()
            .Where(sensor => SensorParts.Find(sensor.Options.Part)?.IsEmulated(sensor.Options) == emulated)
            .Select(sensor => $"{Section}:{sensor.Role.Name}"),
    ];
}
