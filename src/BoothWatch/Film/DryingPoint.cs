namespace BoothWatch.Film;

/// <summary>One moment of a drying run.</summary>
/// <param name="TimeS">Time since the coat landed, s.</param>
/// <param name="FilmTemperatureC">Film temperature, °C.</param>
/// <param name="WaterGPerM2">Free water in the film, g/m².</param>
/// <param name="PolymerFraction">Polymer volume fraction.</param>
/// <param name="SolventLeftFraction">Solvent left, share of the landed solvent volume.</param>
public sealed record DryingPoint(
    double TimeS,
    double FilmTemperatureC,
    double WaterGPerM2,
    double PolymerFraction,
    double SolventLeftFraction);
