namespace BoothWatch.Film;

/// <summary>Air that holds from one moment of a drying run until the next step begins.</summary>
/// <param name="FromS">When it begins, s since the coat landed.</param>
/// <param name="TemperatureC">Air temperature, °C.</param>
/// <param name="DewPointC">Dew point, °C; -100 and below for dry air.</param>
public sealed record AirStep(double FromS, double TemperatureC, double DewPointC);
