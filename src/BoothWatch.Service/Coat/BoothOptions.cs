using BoothWatch.Verdicts;

namespace BoothWatch.Service.Coat;

/// <summary>Where this is, the shop, the booth and its height, and the unit that its people read.</summary>
public sealed class BoothOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "booth";

    /// <summary>Name of the shop, as pages, records and messages carry it; 1 to 60 characters; default <c>Harbour Lane</c>.</summary>
    public string Shop { get; set; } = "Harbour Lane";

    /// <summary>Name of the booth within the shop; 1 to 60 characters; default <c>corner</c>.</summary>
    public string Name { get; set; } = "corner";

    /// <summary>Height above sea level, m: sets the air pressure while no sensor measures it; -430 to 5000; default 0.</summary>
    public double AltitudeM { get; set; }

    /// <summary>
    /// Unit of every temperature written for people (page, chart, reasons, commands): <c>C</c> (default) or <c>F</c>.
    /// Figures in JSON, journal and configuration stay in °C.
    /// </summary>
    public string TemperatureUnit { get; set; } = "C";

    /// <summary>The unit that <see cref="TemperatureUnit"/> names.</summary>
    public TemperatureUnit Unit => TemperatureUnit == "F" ? Verdicts.TemperatureUnit.Fahrenheit : Verdicts.TemperatureUnit.Celsius;
}
