namespace BoothWatch.Film;

/// <summary>The solid below the film: it gives back the heat that evaporation takes.</summary>
/// <param name="Id">Name used in config/materials, for example <c>wood</c>.</param>
/// <param name="ThicknessM">Thickness, m.</param>
/// <param name="ConductivityWPerMK">Thermal conductivity, W/(m K).</param>
/// <param name="VolumetricHeatCapacityJPerM3K">Density times specific heat capacity, J/(m³ K).</param>
public sealed record Substrate(
    string Id,
    double ThicknessM,
    double ConductivityWPerMK,
    double VolumetricHeatCapacityJPerM3K);
