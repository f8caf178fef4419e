using BoothWatch.Solvents;

namespace BoothWatch.Film;

/// <summary>Heat and mass transfer between a surface and the air that passes it.</summary>
/// <remarks>
/// Heat: laminar boundary layer on a flat plate, Nu = 0.664 Re^(1/2) Pr^(1/3) (Pohlhausen; Incropera and others, 6th edition,
/// equation 7.30), times a factor for the turbulence of a room's air, blended with free convection, Nu = 0.59 Ra^(1/4)
/// (same book, equation 9.24 with McAdams' constants) at <see cref="FreeConvectionDifferenceK"/>, by the cubic rule Nu³ = Nu_forced³ + Nu_free³ (section 9.9).
/// Mass: Chilton and Colburn's analogy, k = h / (rho cp Le^(2/3)), written per pressure: F = h / (P cp_molar Le^(2/3)).
/// </remarks>
internal static class AirSideTransfer
{
    /// <summary>Factor on laminar forced convection for the turbulence of booth air. Assumed 1.4 (measured factors at 10 to 40 % turbulence: 1.2 to 1.8).</summary>
    public const double TurbulenceFactor = 1.4;

    /// <summary>Temperature difference at which free convection is reckoned, K: about what a fast lacquer chills to. Assumed 8 K.</summary>
    public const double FreeConvectionDifferenceK = 8;

    /// <summary>Specific heat capacity of dry air, J/(kg K) (ASHRAE Fundamentals 2017, chapter 1).</summary>
    public const double AirHeatCapacityJPerKgK = 1006;

    private const double Prandtl = 0.707;

    /// <summary>Thermal conductivity of air, W/(m K): line through 22.3e-3 at 250 K, 26.3e-3 at 300 K (Incropera and others, 6th edition, table A.4).</summary>
    public static double AirConductivity(double temperatureK) => 0.0263 + (8.0e-5 * (temperatureK - 300));

    /// <summary>Density of dry air as an ideal gas, kg/m³.</summary>
    public static double AirDensity(double temperatureK, double pressurePa) =>
        pressurePa * PhysicalConstants.AirMolarMassKgPerMol / (PhysicalConstants.MolarGas * temperatureK);

    /// <summary>Thermal diffusivity of air, m²/s.</summary>
    public static double AirDiffusivity(double temperatureK, double pressurePa) =>
        AirConductivity(temperatureK) / (AirDensity(temperatureK, pressurePa) * AirHeatCapacityJPerKgK);

    /// <summary>Convective heat-transfer coefficient, W/(m² K).</summary>
    /// <param name="airSpeedMPerS">Air speed, m/s, zero or more.</param>
    /// <param name="lengthM">Length along the stream, m.</param>
    /// <param name="airTemperatureC">Air temperature, °C.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    public static double Convection(double airSpeedMPerS, double lengthM, double airTemperatureC, double pressurePa)
    {
        double temperatureK = airTemperatureC + PhysicalConstants.ZeroCelsiusK;
        double diffusivity = AirDiffusivity(temperatureK, pressurePa);
        double viscosity = Prandtl * diffusivity;
        double forced = TurbulenceFactor * 0.664 * Math.Sqrt(airSpeedMPerS * lengthM / viscosity) * Math.Cbrt(Prandtl);
        double rayleigh = PhysicalConstants.Gravity * FreeConvectionDifferenceK * lengthM * lengthM * lengthM / (temperatureK * viscosity * diffusivity);
        double free = 0.59 * Math.Pow(rayleigh, 0.25);
        double nusselt = Math.Cbrt((forced * forced * forced) + (free * free * free));
        return nusselt * AirConductivity(temperatureK) / lengthM;
    }

    /// <summary>Radiative heat-transfer coefficient to surroundings at air temperature, W/(m² K): 4 ε σ T³.</summary>
    public static double Radiation(double emissivity, double airTemperatureC)
    {
        double temperatureK = airTemperatureC + PhysicalConstants.ZeroCelsiusK;
        return 4 * emissivity * PhysicalConstants.StefanBoltzmann * temperatureK * temperatureK * temperatureK;
    }

    /// <summary>Molar mass-transfer coefficient per pressure, mol/(m² s Pa).</summary>
    /// <param name="convection">Convective heat-transfer coefficient, W/(m² K).</param>
    /// <param name="diffusivityM2PerS">Diffusivity of the vapour in air at the same state, m²/s.</param>
    /// <param name="airTemperatureC">Air temperature, °C.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    public static double MassConductance(double convection, double diffusivityM2PerS, double airTemperatureC, double pressurePa)
    {
        double lewis = AirDiffusivity(airTemperatureC + PhysicalConstants.ZeroCelsiusK, pressurePa) / diffusivityM2PerS;
        double molarHeatCapacity = AirHeatCapacityJPerKgK * PhysicalConstants.AirMolarMassKgPerMol;
        return convection / (pressurePa * molarHeatCapacity * Math.Cbrt(lewis * lewis));
    }
}
