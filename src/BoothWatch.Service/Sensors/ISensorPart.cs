namespace BoothWatch.Service.Sensors;

/// <summary>One kind of part that a sensor may be. A new kind is one folder with its own of these, and one line in <see cref="SensorParts"/>.</summary>
public interface ISensorPart
{
    /// <summary>Its name in the configuration, for example <c>sht4x</c>.</summary>
    string Id { get; }

    /// <summary>The roles it can fill.</summary>
    IReadOnlyList<SensorRole> Roles { get; }

    /// <summary>Whether it would provide the station pressure with these settings; only one sensor may.</summary>
    bool GivesPressure(SensorOptions options) => false;

    /// <summary>The GPIO number that it would take with these settings; null when it takes none.</summary>
    int? PinOf(SensorOptions options) => null;

    /// <summary>Whether it would measure the scripted shop with these settings; null when its source is none that there is.</summary>
    bool? IsEmulated(SensorOptions options) => SignalSourceWord.Parse(options.Source) is { } source ? source == SignalSource.Emulated : null;

    /// <summary>Adds an error for every setting that this part cannot work with: full key, value, what is allowed.</summary>
    /// <param name="key">Key of the sensor, for example <c>sensors:boothAir</c>.</param>
    /// <param name="options">Its settings.</param>
    /// <param name="errors">Where to add to.</param>
    void Check(string key, SensorOptions options, ICollection<string> errors);

    /// <summary>Makes the sensor, and the emulated hardware behind it where it is not real. Touches no real hardware.</summary>
    ISensor Create(SensorRole role, SensorOptions options, SensorWiring wiring);
}
