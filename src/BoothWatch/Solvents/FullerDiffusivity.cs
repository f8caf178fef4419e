namespace BoothWatch.Solvents;

/// <summary>Gas diffusivity after Fuller, Schettler and Giddings.</summary>
/// <remarks>
/// D = 0.00143 T^1.75 / (P M^0.5 (vA^(1/3) + vB^(1/3))²) in cm²/s with T in K, P in bar, M = 2/(1/MA + 1/MB) in g/mol
/// and the diffusion volumes in cm³/mol (Poling, Prausnitz and O'Connell, 5th edition, equation 11-4.4; stated error about 4 %).
/// </remarks>
public static class FullerDiffusivity
{
    /// <summary>Diffusion volume of air, cm³/mol (same source, table 11-1).</summary>
    public const double AirVolumeCm3PerMol = 19.7;

    /// <summary>Diffusion volume of water vapour, cm³/mol (same source, table 11-1).</summary>
    public const double WaterVolumeCm3PerMol = 13.1;

    /// <summary>Exponent of temperature.</summary>
    public const double TemperatureExponent = 1.75;

    /// <summary>Diffusivity of a vapour in air, m²/s.</summary>
    /// <param name="molarMassKgPerMol">Molar mass of the vapour, kg/mol.</param>
    /// <param name="volumeCm3PerMol">Fuller diffusion volume of the vapour, cm³/mol.</param>
    /// <param name="temperatureC">Gas temperature, °C.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    public static double InAirM2PerS(double molarMassKgPerMol, double volumeCm3PerMol, double temperatureC, double pressurePa)
    {
        double pairMass = 2 / ((1 / (molarMassKgPerMol * 1000)) + (1 / (PhysicalConstants.AirMolarMassKgPerMol * 1000)));
        double pairSize = Math.Cbrt(volumeCm3PerMol) + Math.Cbrt(AirVolumeCm3PerMol);
        double temperatureK = temperatureC + PhysicalConstants.ZeroCelsiusK;
        double cm2PerS = 0.00143 * Math.Pow(temperatureK, TemperatureExponent)
            / (pressurePa / 1e5 * Math.Sqrt(pairMass) * pairSize * pairSize);
        return cm2PerS * 1e-4;
    }
}
