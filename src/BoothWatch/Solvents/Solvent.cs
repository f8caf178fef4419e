namespace BoothWatch.Solvents;

/// <summary>One volatile liquid and the properties that the drying film needs.</summary>
/// <param name="Id">Short name used in config/materials, for example <c>n-butyl acetate</c>.</param>
public sealed record Solvent(string Id)
{
    /// <summary>Exponent of Watson's rule (Poling, Prausnitz and O'Connell, 5th edition, section 7-11).</summary>
    public const double WatsonExponent = 0.38;

    private const double ReferenceK = 298.15;

    /// <summary>Full chemical name.</summary>
    public required string Name { get; init; }

    /// <summary>CAS registry number.</summary>
    public required string CasNumber { get; init; }

    /// <summary>Molar mass, kg/mol.</summary>
    public required double MolarMassKgPerMol { get; init; }

    /// <summary>Vapour pressure of the pure liquid.</summary>
    public required VapourPressure VapourPressure { get; init; }

    /// <summary>Critical temperature, K.</summary>
    public required double CriticalTemperatureK { get; init; }

    /// <summary>Heat of vaporisation at 25 °C, J/mol.</summary>
    public required double HeatOfVaporisation25CJPerMol { get; init; }

    /// <summary>Density of the liquid at 20 °C, kg/m³; its change with temperature (about 0.1 % a kelvin) is left out.</summary>
    public required double LiquidDensityKgPerM3 { get; init; }

    /// <summary>Heat capacity of the liquid at 25 °C, J/(mol K).</summary>
    public required double LiquidHeatCapacityJPerMolK { get; init; }

    /// <summary>Fuller diffusion volume, cm³/mol.</summary>
    public required double FullerVolumeCm3PerMol { get; init; }

    /// <summary>Measured diffusivity in air, m²/s at <see cref="MeasuredDiffusivityAtC"/> and 1 atm; null: take Fuller's estimate.</summary>
    public double? MeasuredDiffusivityM2PerS { get; init; }

    /// <summary>Temperature of the measured diffusivity, °C.</summary>
    public double MeasuredDiffusivityAtC { get; init; }

    /// <summary>Where each group of figures comes from; <c>assumed</c> and <c>from memory</c> say so.</summary>
    public required IReadOnlyDictionary<string, string> Sources { get; init; }

    /// <summary>Molar volume of the liquid at 20 °C, m³/mol.</summary>
    public double MolarVolumeM3PerMol => MolarMassKgPerMol / LiquidDensityKgPerM3;

    /// <summary>Heat of vaporisation, J/mol, after Watson: L(T) = L(25 °C) ((1 - T/Tc) / (1 - 298.15/Tc))^0.38.</summary>
    /// <param name="temperatureC">Temperature, °C; below the critical temperature.</param>
    public double HeatOfVaporisationJPerMol(double temperatureC)
    {
        double reduced = (CriticalTemperatureK - temperatureC - PhysicalConstants.ZeroCelsiusK) / (CriticalTemperatureK - ReferenceK);
        return HeatOfVaporisation25CJPerMol * Math.Pow(reduced, WatsonExponent);
    }

    /// <summary>Diffusivity of the vapour in air, m²/s: the measured value scaled with T^1.75/p, else Fuller's estimate.</summary>
    /// <param name="temperatureC">Gas temperature, °C.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    public double DiffusivityInAirM2PerS(double temperatureC, double pressurePa)
    {
        if (MeasuredDiffusivityM2PerS is not { } measured)
        {
            return FullerDiffusivity.InAirM2PerS(MolarMassKgPerMol, FullerVolumeCm3PerMol, temperatureC, pressurePa);
        }

        double ratio = (temperatureC + PhysicalConstants.ZeroCelsiusK) / (MeasuredDiffusivityAtC + PhysicalConstants.ZeroCelsiusK);
        return measured * Math.Pow(ratio, FullerDiffusivity.TemperatureExponent) * PhysicalConstants.StandardPressurePa / pressurePa;
    }
}
