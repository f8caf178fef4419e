namespace BoothWatch.Film;

/// <summary>The parameters of the drying-film model that no data sheet gives. docs/method.md argues each value.</summary>
public sealed record FilmParameters
{
    /// <summary>The values the product uses.</summary>
    public static FilmParameters Default { get; } = new();

    /// <summary>Flory-Huggins interaction parameter of the solvent blend with the polymer. Assumed 0.4 (good solvents of cellulose nitrate: 0.2 to 0.5).</summary>
    public double Chi { get; init; } = 0.4;

    /// <summary>Polymer volume fraction at which the film no longer lets water out: the set point. Assumed 0.5.</summary>
    public double SetPolymerFraction { get; init; } = 0.5;

    /// <summary>Free water at set above which the film is called blushed, g/m². Assumed 0.1, the order at which droplets of 0.5 µm radius give a haze of about 0.2 optical depth.</summary>
    public double BlushToleranceGPerM2 { get; init; } = 0.1;

    /// <summary>Amount of water over which the activity of water rises from 0 to 1, g/m²; smooths the start of condensation.</summary>
    public double WaterSmoothingGPerM2 { get; init; } = 0.002;

    /// <summary>Emissivity of a wet lacquer film in the thermal infrared. Assumed 0.9 (organic films: 0.85 to 0.95).</summary>
    public double Emissivity { get; init; } = 0.9;

    /// <summary>Length along the air stream that convection is reckoned over, m. Assumed 0.1: the rim of a panel, a neck or a leg, where air touches first and a film chills most.</summary>
    public double PieceLengthM { get; init; } = 0.1;

    /// <summary>Factor on the convective heat-transfer coefficient, for sensitivity studies.</summary>
    public double ConvectionFactor { get; init; } = 1;

    /// <summary>Volumetric heat capacity of the polymer with resin and plasticiser, J/(m³ K). Assumed 2.0e6.</summary>
    public double PolymerHeatCapacityJPerM3K { get; init; } = 2.0e6;

    /// <summary>Heat capacity of a solvent's vapour over that of its liquid. Assumed 0.65; enters only the small correction of convection for the outflow of vapour.</summary>
    public double VapourHeatCapacityRatio { get; init; } = 0.65;

    /// <summary>Share of the landed volume at which a film without polymer counts as dry.</summary>
    public double DryVolumeFraction { get; init; } = 0.01;

    /// <summary>Longest simulated time, s.</summary>
    public double LongestRunS { get; init; } = 6 * 3600;

    /// <summary>Standard uncertainty (k = 1) of a critical dew point that the parameters above bring with them, °C. Assumed 0.8, from varying them within their stated ranges and from leaving out non-ideal blends; docs/method.md shows the spread.</summary>
    public double ModelUncertaintyC { get; init; } = 0.8;

    /// <summary>Relative tolerance of the solver.</summary>
    public double Tolerance { get; init; } = 2e-4;

    /// <summary>Cells of the substrate grid.</summary>
    public int SubstrateCells { get; init; } = 12;
}
