namespace BoothWatch.Verdicts;

/// <summary>From the °C of everything inside BoothWatch to the unit that people read. Nothing else converts.</summary>
/// <remarks>°F = °C · 1.8 + 32, by definition of the scale; a difference has no offset.</remarks>
public static class TemperatureScale
{
    private const double FahrenheitPerCelsius = 1.8;
    private const double FahrenheitAtZeroCelsius = 32.0;

    /// <summary>How the unit is written: <c>°C</c> or <c>°F</c>.</summary>
    public static string Symbol(this TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? "°F" : "°C";

    /// <summary>A temperature in this unit.</summary>
    public static double FromCelsius(this TemperatureUnit unit, double temperatureC) =>
        unit == TemperatureUnit.Fahrenheit ? (temperatureC * FahrenheitPerCelsius) + FahrenheitAtZeroCelsius : temperatureC;

    /// <summary>A temperature difference in this unit.</summary>
    public static double FromCelsiusDifference(this TemperatureUnit unit, double differenceC) =>
        unit == TemperatureUnit.Fahrenheit ? differenceC * FahrenheitPerCelsius : differenceC;
}
