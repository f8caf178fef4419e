namespace BoothWatch.Reviews;

/// <summary>The drying film at one moment, as the model saw it.</summary>
/// <param name="Time">When, UTC.</param>
/// <param name="FilmTemperatureC">Film temperature, °C.</param>
/// <param name="DewPointC">Dew point of the air then, °C.</param>
/// <param name="AirTemperatureC">Temperature of the air then, °C.</param>
/// <param name="WaterGPerM2">Free water in the film, g/m².</param>
public sealed record ReviewFilmPoint(DateTimeOffset Time, double FilmTemperatureC, double DewPointC, double AirTemperatureC, double WaterGPerM2);
