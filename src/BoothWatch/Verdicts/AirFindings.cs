namespace BoothWatch.Verdicts;

/// <summary>The booth air as the verdict saw it.</summary>
/// <param name="TemperatureC">Air temperature, °C.</param>
/// <param name="RelativeHumidityPct">Relative humidity, %.</param>
/// <param name="PressurePa">Station pressure, Pa.</param>
/// <param name="DewPointC">Dew point, °C.</param>
/// <param name="DewPointUncertaintyC">Standard uncertainty of the dew point, °C.</param>
/// <param name="HumidityRatio">Mass of water a mass of dry air, kg/kg.</param>
/// <param name="PieceTemperatureC">Temperature of the piece, °C; null when unknown.</param>
public sealed record AirFindings(
    double TemperatureC,
    double RelativeHumidityPct,
    double PressurePa,
    double DewPointC,
    double DewPointUncertaintyC,
    double HumidityRatio,
    double? PieceTemperatureC);
