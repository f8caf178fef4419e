namespace BoothWatch.Air;

/// <summary>Air pressure at the shop where no barometer measures it.</summary>
/// <remarks>
/// Standard atmosphere below 11 km: p = p0 (1 - L H/T0)^(g0/(R L)), with the geopotential altitude H = r z/(r + z).
/// Source: ICAO Doc 7488 (1993), the same as ISO 2533:1975. Weather moves the true pressure by about ±3 % around it, which
/// moves the humidity ratio by the same share and the dew point not at all.
/// </remarks>
public static class StationPressure
{
    /// <summary>Lowest altitude, m.</summary>
    public const double LowestAltitudeM = -500;

    /// <summary>Highest altitude, m.</summary>
    public const double HighestAltitudeM = 5000;

    private const double SeaLevelPa = 101_325;
    private const double SeaLevelK = 288.15;
    private const double LapseKPerM = 0.0065;
    private const double GravityMPerS2 = 9.80665;
    private const double DryAirGasConstant = 287.05287;
    private const double EarthRadiusM = 6_356_766;
    private const double Exponent = GravityMPerS2 / (DryAirGasConstant * LapseKPerM);

    /// <summary>Standard pressure at an altitude, Pa.</summary>
    /// <param name="altitudeM">Altitude above mean sea level, m, -500 to 5000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The altitude is not a number or out of range.</exception>
    public static double AtAltitude(double altitudeM) => FromSeaLevel(SeaLevelPa, altitudeM);

    /// <summary>Station pressure from the sea-level pressure (QNH) of a weather report, Pa.</summary>
    /// <param name="seaLevelPressurePa">Pressure reduced to sea level in the standard atmosphere (QNH), Pa, 85,000 to 110,000.</param>
    /// <param name="altitudeM">Altitude above mean sea level, m, -500 to 5000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a number or out of its range.</exception>
    public static double FromSeaLevel(double seaLevelPressurePa, double altitudeM)
    {
        Require.InRange(seaLevelPressurePa, 85_000, 110_000, "Pa");
        Require.InRange(altitudeM, LowestAltitudeM, HighestAltitudeM, "m");
        double geopotentialM = EarthRadiusM * altitudeM / (EarthRadiusM + altitudeM);
        double rise = LapseKPerM * geopotentialM / SeaLevelK;
        return SeaLevelPa * Math.Pow(Math.Pow(seaLevelPressurePa / SeaLevelPa, 1 / Exponent) - rise, Exponent);
    }
}
