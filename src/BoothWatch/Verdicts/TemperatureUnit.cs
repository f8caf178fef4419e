namespace BoothWatch.Verdicts;

/// <summary>The unit that temperatures are written in for people. Everything inside BoothWatch stays in °C.</summary>
public enum TemperatureUnit
{
    /// <summary>Degrees Celsius, °C.</summary>
    Celsius = 0,

    /// <summary>Degrees Fahrenheit, °F.</summary>
    Fahrenheit = 1,
}
