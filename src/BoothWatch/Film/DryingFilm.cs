using BoothWatch.Solvents;

namespace BoothWatch.Film;

/// <summary>The balance equations of a drying film on its substrate, and their Jacobian. docs/method.md gives each with its source.</summary>
/// <remarks>
/// State, per m² of film: moles of each solvent, moles of free water, film temperature (K), temperatures of the substrate cells (K).
/// The first <see cref="CoreSize"/> entries couple all to all; the substrate is tridiagonal and touches only the film temperature.
/// </remarks>
internal sealed partial class DryingFilm
{
    /// <summary>Heat of vaporisation of water at 0 °C, J/mol.</summary>
    internal const double WaterHeatAt0C = 2.501e6 * PhysicalConstants.WaterMolarMassKgPerMol;

    /// <summary>Its slope, J/(mol K).</summary>
    internal const double WaterHeatSlope = -2361 * PhysicalConstants.WaterMolarMassKgPerMol;

    private const double WaterLiquidHeatCapacity = 75.3;

    /// <summary>Vapour share of the pressure above which the Stefan correction goes on as a straight line, so that a boiling film stays finite.</summary>
    private const double HighestVapourShare = 0.9;

    private readonly FilmParameters _parameters;
    private readonly CoatConditions _conditions;
    private readonly int _solvents;
    private readonly VapourPressure[] _vapourPressure;
    private readonly double[] _conductance;
    private readonly double[] _molarVolume;
    private readonly double[] _heat;
    private readonly double[] _heatSlope;
    private readonly double[] _liquidHeatCapacity;
    private double _waterConductance;
    private double _airK;
    private readonly double _pressurePa;
    private double _airVapourPa;
    private double _convection;
    private double _radiation;
    private readonly double _waterSmoothingMol;
    private readonly double _polymerHeatCapacity;
    private readonly SubstrateGrid _grid;

    // work space of one evaluation
    private readonly double[] _pressure;
    private readonly double[] _slope;
    private readonly double[] _pressureByMoles;

    /// <summary>Prepares the equations of one coat in one air.</summary>
    public DryingFilm(CoatConditions conditions, double airVapourPa, FilmParameters parameters)
    {
        _parameters = parameters;
        IReadOnlyList<(Solvent Solvent, double VolumeFraction)> solvents = conditions.Mix.Solvents;
        _solvents = solvents.Count;
        _pressurePa = conditions.PressurePa;
        _conditions = conditions;
        _grid = new SubstrateGrid(conditions.Substrate, parameters.SubstrateCells);
        _waterSmoothingMol = GramsToMoles(parameters.WaterSmoothingGPerM2);

        double filmM = conditions.WetFilmUm * 1e-6;
        PolymerVolume = conditions.Mix.PolymerVolumeFraction * filmM;
        LandedVolume = filmM;
        _polymerHeatCapacity = PolymerVolume * parameters.PolymerHeatCapacityJPerM3K;

        _vapourPressure = new VapourPressure[_solvents];
        _conductance = new double[_solvents];
        _molarVolume = new double[_solvents];
        _heat = new double[_solvents];
        _heatSlope = new double[_solvents];
        _liquidHeatCapacity = new double[_solvents];
        LandedMoles = new double[_solvents];
        for (int i = 0; i < _solvents; i++)
        {
            (Solvent solvent, double fraction) = solvents[i];
            _vapourPressure[i] = solvent.VapourPressure;
            _molarVolume[i] = solvent.MolarVolumeM3PerMol;
            LandedMoles[i] = fraction * filmM / _molarVolume[i];
            _liquidHeatCapacity[i] = solvent.LiquidHeatCapacityJPerMolK;
        }

        _pressure = new double[_solvents];
        _slope = new double[_solvents];
        _pressureByMoles = new double[_solvents];
        Surround(conditions.AirTemperatureC, airVapourPa);
    }

    /// <summary>Entries that couple all to all: solvents, water, film temperature.</summary>
    public int CoreSize => _solvents + 2;

    /// <summary>Length of the state.</summary>
    public int Size => CoreSize + _grid.Capacity.Length;

    /// <summary>Index of free water.</summary>
    public int WaterIndex => _solvents;

    /// <summary>Index of the film temperature.</summary>
    public int TemperatureIndex => _solvents + 1;

    /// <summary>Substrate cells.</summary>
    public int Cells => _grid.Capacity.Length;

    /// <summary>Volume of polymer, m³/m².</summary>
    public double PolymerVolume { get; }

    /// <summary>Volume as landed, m³/m².</summary>
    public double LandedVolume { get; }

    /// <summary>Moles of each solvent as landed, mol/m².</summary>
    public double[] LandedMoles { get; }

    /// <summary>g/m² of water to mol/m².</summary>
    public static double GramsToMoles(double grams) => grams * 1e-3 / PhysicalConstants.WaterMolarMassKgPerMol;

    /// <summary>mol/m² of water to g/m².</summary>
    public static double MolesToGrams(double moles) => moles * 1e3 * PhysicalConstants.WaterMolarMassKgPerMol;

    /// <summary>
    /// Puts the film into an air: at the landing, and again whenever it changes. Every coefficient that depends on the air follows; the
    /// state of the film and its piece stays. <see cref="SubstrateJacobian"/> and the rates belong to the new air from then on.
    /// </summary>
    /// <param name="airTemperatureC">Air temperature, °C; walls and back face have it too.</param>
    /// <param name="airVapourPa">Partial pressure of water vapour in the air, Pa.</param>
    public void Surround(double airTemperatureC, double airVapourPa)
    {
        _airK = airTemperatureC + PhysicalConstants.ZeroCelsiusK;
        _airVapourPa = airVapourPa;
        _convection = _parameters.ConvectionFactor
            * AirSideTransfer.Convection(_conditions.AirSpeedMPerS, _parameters.PieceLengthM, airTemperatureC, _pressurePa);
        _radiation = AirSideTransfer.Radiation(_parameters.Emissivity, airTemperatureC);
        _grid.ExposeBack(_convection + _radiation);
        _waterConductance = AirSideTransfer.MassConductance(
            _convection,
            FullerDiffusivity.InAirM2PerS(PhysicalConstants.WaterMolarMassKgPerMol, FullerDiffusivity.WaterVolumeCm3PerMol, airTemperatureC, _pressurePa),
            airTemperatureC,
            _pressurePa);
        for (int i = 0; i < _solvents; i++)
        {
            Solvent solvent = _conditions.Mix.Solvents[i].Solvent;
            _conductance[i] = AirSideTransfer.MassConductance(
                _convection, solvent.DiffusivityInAirM2PerS(airTemperatureC, _pressurePa), airTemperatureC, _pressurePa);

            // Watson's rule as a straight line about 10 K below air temperature: within 0.1 % over 20 K.
            double middleC = airTemperatureC - 10;
            _heatSlope[i] = (solvent.HeatOfVaporisationJPerMol(middleC + 5) - solvent.HeatOfVaporisationJPerMol(middleC - 5)) / 10;
            _heat[i] = solvent.HeatOfVaporisationJPerMol(middleC) - (_heatSlope[i] * (middleC + PhysicalConstants.ZeroCelsiusK));
        }
    }

    /// <summary>The state as the coat lands.</summary>
    public void Initial(Span<double> state, double landingK, double pieceK)
    {
        state.Fill(pieceK);
        LandedMoles.CopyTo(state);
        state[WaterIndex] = 0;
        state[TemperatureIndex] = landingK;
    }

    /// <summary>Volume of polymer and solvents, m³/m².</summary>
    public double Volume(ReadOnlySpan<double> state)
    {
        double volume = PolymerVolume;
        for (int i = 0; i < _solvents; i++)
        {
            volume += state[i] * _molarVolume[i];
        }

        return volume;
    }

    /// <summary>Rate of change of <see cref="Volume"/>, from the rates of the state.</summary>
    public double VolumeRate(ReadOnlySpan<double> rate)
    {
        double volume = 0;
        for (int i = 0; i < _solvents; i++)
        {
            volume += rate[i] * _molarVolume[i];
        }

        return volume;
    }
}
