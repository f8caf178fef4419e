namespace BoothWatch.Verdicts;

/// <summary>The unit that reasons speak in. Everything inside BoothWatch stays in °C.</summary>
public enum TemperatureUnit
{
    /// <summary>Degrees Celsius, °C.</summary>
    Celsius = 0,

    /// <summary>Degrees Fahrenheit, °F.</summary>
    Fahrenheit = 1,
}
