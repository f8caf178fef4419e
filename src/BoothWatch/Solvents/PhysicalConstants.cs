namespace BoothWatch.Solvents;

/// <summary>Constants of nature and of dry air that the film and its solvents share.</summary>
internal static class PhysicalConstants
{
    /// <summary>0 °C in K (definition).</summary>
    public const double ZeroCelsiusK = 273.15;

    /// <summary>Standard atmosphere, Pa (definition).</summary>
    public const double StandardPressurePa = 101325;

    /// <summary>Stefan-Boltzmann constant, W/(m² K⁴) (CODATA 2018).</summary>
    public const double StefanBoltzmann = 5.670374419e-8;

    /// <summary>Molar gas constant, J/(mol K) (CODATA 2018).</summary>
    public const double MolarGas = 8.314462618;

    /// <summary>Molar mass of water, kg/mol (IAPWS).</summary>
    public const double WaterMolarMassKgPerMol = 0.018015268;

    /// <summary>Molar mass of dry air, kg/mol (ASHRAE Fundamentals 2017, chapter 1: 28.966 g/mol).</summary>
    public const double AirMolarMassKgPerMol = 0.028966;

    /// <summary>Standard gravity, m/s² (definition).</summary>
    public const double Gravity = 9.80665;
}
