using BoothWatch.Air;
using BoothWatch.Solvents;

namespace BoothWatch.Film;

/// <summary>The balance equations of a drying film on its substrate, and their Jacobian. docs/method-film.md gives each with its source.</summary>
/// <remarks>
/// State, per m² of film: moles of each solvent, moles of free water, film temperature (K), temperatures of the substrate cells (K).
/// The first <see cref="CoreSize"/> entries couple all to all; the substrate is tridiagonal and touches only the film temperature.
/// </remarks>
internal sealed class DryingFilm
{
    private const double WaterHeatAt0C = 2.501e6 * PhysicalConstants.WaterMolarMassKgPerMol;
    private const double WaterHeatSlope = -2361 * PhysicalConstants.WaterMolarMassKgPerMol;
    private const double WaterLiquidHeatCapacity = 75.3;

    /// <summary>Vapour share of the pressure above which the Stefan correction goes on as a straight line, so that a boiling film stays finite.</summary>
    private const double HighestVapourShare = 0.9;

    private readonly FilmParameters _parameters;
    private readonly int _solvents;
    private readonly VapourPressure[] _vapourPressure;
    private readonly double[] _conductance;
    private readonly double[] _molarVolume;
    private readonly double[] _heat;
    private readonly double[] _heatSlope;
    private readonly double[] _liquidHeatCapacity;
    private readonly double _waterConductance;
    private readonly double _airK;
    private readonly double _pressurePa;
    private readonly double _airVapourPa;
    private readonly double _convection;
    private readonly double _radiation;
    private readonly double _waterSmoothingMol;
    private readonly double _polymerHeatCapacity;
    private readonly SubstrateGrid _grid;

    // work space of one evaluation
    private readonly double[] _pressure;
    private readonly double[] _slope;
    private readonly double[] _flux;
    private readonly double[] _shareByMoles;
    private readonly double[] _activityByMoles;
    private readonly double[] _totalByMoles;
    private readonly double[] _heatByMoles;

    /// <summary>Prepares the equations of one coat in one air.</summary>
    public DryingFilm(CoatConditions conditions, double airVapourPa, FilmParameters parameters)
    {
        _parameters = parameters;
        IReadOnlyList<(Solvent Solvent, double VolumeFraction)> solvents = conditions.Mix.Solvents;
        _solvents = solvents.Count;
        _airK = conditions.AirTemperatureC + PhysicalConstants.ZeroCelsiusK;
        _pressurePa = conditions.PressurePa;
        _airVapourPa = airVapourPa;
        _convection = parameters.ConvectionFactor
            * AirSideTransfer.Convection(conditions.AirSpeedMPerS, parameters.PieceLengthM, conditions.AirTemperatureC, conditions.PressurePa);
        _radiation = AirSideTransfer.Radiation(parameters.Emissivity, conditions.AirTemperatureC);
        _grid = new SubstrateGrid(conditions.Substrate, parameters.SubstrateCells, _convection + _radiation);
        _waterConductance = AirSideTransfer.MassConductance(
            _convection,
            FullerDiffusivity.InAirM2PerS(PhysicalConstants.WaterMolarMassKgPerMol, 13.1, conditions.AirTemperatureC, conditions.PressurePa),
            conditions.AirTemperatureC,
            conditions.PressurePa);
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
            _conductance[i] = AirSideTransfer.MassConductance(
                _convection,
                solvent.DiffusivityInAirM2PerS(conditions.AirTemperatureC, conditions.PressurePa),
                conditions.AirTemperatureC,
                conditions.PressurePa);

            // Watson's rule as a straight line about 10 K below air temperature: within 0.1 % over 20 K.
            double middleC = conditions.AirTemperatureC - 10;
            _heatSlope[i] = (solvent.HeatOfVaporisationJPerMol(middleC + 5) - solvent.HeatOfVaporisationJPerMol(middleC - 5)) / 10;
            _heat[i] = solvent.HeatOfVaporisationJPerMol(middleC) - (_heatSlope[i] * (middleC + PhysicalConstants.ZeroCelsiusK));
        }

        _pressure = new double[_solvents];
        _slope = new double[_solvents];
        _flux = new double[_solvents];
        _shareByMoles = new double[_solvents];
        _activityByMoles = new double[_solvents];
        _totalByMoles = new double[_solvents];
        _heatByMoles = new double[_solvents];
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

    /// <summary>Rates of change of the state, and on request the dense core block of the Jacobian (row by row).</summary>
    public void Evaluate(ReadOnlySpan<double> state, Span<double> rate, Span<double> core)
    {
        bool jacobian = !core.IsEmpty;
        double temperatureK = state[TemperatureIndex];
        double lnTemperature = Math.Log(temperatureK);
        double moles = 0;
        double volume = PolymerVolume;
        double capacity = _polymerHeatCapacity + (state[WaterIndex] * WaterLiquidHeatCapacity);
        for (int i = 0; i < _solvents; i++)
        {
            moles += state[i];
            volume += state[i] * _molarVolume[i];
            capacity += state[i] * _liquidHeatCapacity[i];
        }

        // Flory-Huggins activity of the solvent blend over the polymer: ln a = ln(1-φ) + φ + χ φ².
        double polymer = PolymerVolume / volume;
        double blend = (1 - polymer) * Math.Exp(polymer + (_parameters.Chi * polymer * polymer));
        double blendSlope = (1 + (2 * _parameters.Chi * polymer) - (1 / (1 - polymer))) * -polymer / volume;

        double share = 0;
        double shareByTemperature = 0;
        for (int i = 0; i < _solvents; i++)
        {
            (double ln, double slope) = _vapourPressure[i].Ln(temperatureK, lnTemperature);
            double unit = blend * Math.Exp(ln) / moles;
            _activityByMoles[i] = unit;
            _pressure[i] = unit * state[i];
            _slope[i] = slope;
            share += _pressure[i];
            shareByTemperature += _pressure[i] * slope;
        }

        share /= _pressurePa;
        shareByTemperature /= _pressurePa;
        (double stefan, double stefanSlope) = Stefan(share);

        double total = 0;
        double totalByTemperature = 0;
        double sensible = 0;
        double sensibleByTemperature = 0;
        double latent = 0;
        double latentByTemperature = 0;
        double vapourHeatRatio = _parameters.VapourHeatCapacityRatio;
        for (int i = 0; i < _solvents; i++)
        {
            double flux = _conductance[i] * _pressure[i] * stefan;
            double fluxByTemperature = _conductance[i] * _pressure[i] * ((_slope[i] * stefan) + (stefanSlope * shareByTemperature));
            double heat = _heat[i] + (_heatSlope[i] * temperatureK);
            _flux[i] = flux;
            rate[i] = -flux;
            total += flux;
            totalByTemperature += fluxByTemperature;
            sensible += flux * _liquidHeatCapacity[i];
            sensibleByTemperature += fluxByTemperature * _liquidHeatCapacity[i];
            latent += flux * heat;
            latentByTemperature += (fluxByTemperature * heat) + (flux * _heatSlope[i]);
            if (jacobian)
            {
                core[(i * CoreSize) + WaterIndex] = 0;
                core[(i * CoreSize) + TemperatureIndex] = -fluxByTemperature;
            }
        }

        // Water crosses the outflow of solvent vapour (film theory): N = F (a p_sat (B + θ) - p_air B), B = θ/(e^θ - 1).
        double outflow = total / (_waterConductance * _pressurePa);
        (double bernoulli, double bernoulliSlope) = Bernoulli(outflow);
        double saturation = SaturationPressure.OverWater(temperatureK - PhysicalConstants.ZeroCelsiusK, out double saturationSlope);
        double dryness = Math.Exp(-state[WaterIndex] / _waterSmoothingMol);
        double waterPressure = (1 - dryness) * saturation;
        double waterFlux = _waterConductance * ((waterPressure * (bernoulli + outflow)) - (_airVapourPa * bernoulli));
        double waterFluxByOutflow = _waterConductance * ((waterPressure * (bernoulliSlope + 1)) - (_airVapourPa * bernoulliSlope));
        double waterFluxByWater = _waterConductance * saturation * dryness / _waterSmoothingMol * (bernoulli + outflow);
        double waterHeat = WaterHeatAt0C + (WaterHeatSlope * (temperatureK - PhysicalConstants.ZeroCelsiusK));
        rate[WaterIndex] = -waterFlux;

        // Heat: convection (less while vapour streams out, Ackermann), radiation, evaporation, conduction.
        double ackermannArgument = sensible * vapourHeatRatio / _convection;
        (double ackermann, double ackermannSlope) = Bernoulli(ackermannArgument);
        double difference = _airK - temperatureK;
        double below = _grid.Conductance[0] * (state[CoreSize] - temperatureK);
        double gain = (((_convection * ackermann) + _radiation) * difference) - latent - (waterFlux * waterHeat) + below;
        double temperatureRate = gain / capacity;
        rate[TemperatureIndex] = temperatureRate;

        double flow = below;
        int last = Cells - 1;
        for (int i = 0; i <= last; i++)
        {
            double here = state[CoreSize + i];
            double next = i < last ? state[CoreSize + i + 1] : _airK;
            double inward = _grid.Conductance[i + 1] * (next - here);
            rate[CoreSize + i] = (inward - flow) / _grid.Capacity[i];
            flow = inward;
        }

        if (!jacobian)
        {
            return;
        }

        // Common factors by each solvent's moles j: every pressure scales by (blend slope v_j - 1/moles), the j-th also by its own amount.
        double pressureScaled = share * _pressurePa;
        for (int j = 0; j < _solvents; j++)
        {
            double common = (blendSlope * _molarVolume[j]) - (1 / moles);
            _shareByMoles[j] = (_activityByMoles[j] + (pressureScaled * common)) / _pressurePa;
            _totalByMoles[j] = 0;
            _heatByMoles[j] = 0;
            double sensibleByMoles = 0;
            for (int i = 0; i < _solvents; i++)
            {
                double pressureByMoles = (_pressure[i] * common) + (i == j ? _activityByMoles[i] : 0);
                double byMoles = _conductance[i] * ((pressureByMoles * stefan) + (_pressure[i] * stefanSlope * _shareByMoles[j]));
                core[(i * CoreSize) + j] = -byMoles;
                _totalByMoles[j] += byMoles;
                _heatByMoles[j] += byMoles * (_heat[i] + (_heatSlope[i] * temperatureK));
                sensibleByMoles += byMoles * _liquidHeatCapacity[i];
            }

            double waterByMoles = waterFluxByOutflow * _totalByMoles[j] / (_waterConductance * _pressurePa);
            core[(WaterIndex * CoreSize) + j] = -waterByMoles;
            double gainByMoles = (ackermannSlope * sensibleByMoles * vapourHeatRatio * difference) - _heatByMoles[j] - (waterByMoles * waterHeat);
            core[(TemperatureIndex * CoreSize) + j] = (gainByMoles - (temperatureRate * _liquidHeatCapacity[j])) / capacity;
        }

        double waterByTemperature = (_waterConductance * (1 - dryness) * saturationSlope * (bernoulli + outflow))
            + (waterFluxByOutflow * totalByTemperature / (_waterConductance * _pressurePa));
        core[(WaterIndex * CoreSize) + WaterIndex] = -waterFluxByWater;
        core[(WaterIndex * CoreSize) + TemperatureIndex] = -waterByTemperature;
        core[(TemperatureIndex * CoreSize) + WaterIndex] =
            ((-waterFluxByWater * waterHeat) - (temperatureRate * WaterLiquidHeatCapacity)) / capacity;
        core[(TemperatureIndex * CoreSize) + TemperatureIndex] =
            ((ackermannSlope * sensibleByTemperature * vapourHeatRatio * difference) - (_convection * ackermann) - _radiation
                - latentByTemperature - (waterByTemperature * waterHeat) - (waterFlux * WaterHeatSlope) - _grid.Conductance[0]) / capacity;
        FilmBySubstrate = _grid.Conductance[0] / capacity;
    }

    /// <summary>Jacobian entry: film temperature rate by the first cell, as of the last evaluation with a Jacobian.</summary>
    public double FilmBySubstrate { get; private set; }

    /// <summary>The constant tridiagonal part of the Jacobian: each cell by the one above (the film for the first), itself, the one below.</summary>
    public void SubstrateJacobian(Span<double> above, Span<double> own, Span<double> below)
    {
        for (int i = 0; i < Cells; i++)
        {
            double up = _grid.Conductance[i] / _grid.Capacity[i];
            double down = _grid.Conductance[i + 1] / _grid.Capacity[i];
            above[i] = up;
            below[i] = i < Cells - 1 ? down : 0;
            own[i] = -up - down;
        }
    }

    /// <summary>Stefan's correction -ln(1-y)/y for a vapour share y of the pressure, and its slope.</summary>
    private static (double Value, double Slope) Stefan(double share)
    {
        if (share < 1e-3)
        {
            return (1 + (share * (0.5 + (share / 3))), 0.5 + (2 * share / 3) + (0.75 * share * share));
        }

        double bounded = Math.Min(share, HighestVapourShare);
        double value = -Math.Log(1 - bounded) / bounded;
        double slope = ((1 / (1 - bounded)) - value) / bounded;
        return (value + (slope * (share - bounded)), slope);
    }

    /// <summary>B(θ) = θ/(e^θ - 1) and its slope.</summary>
    private static (double Value, double Slope) Bernoulli(double theta)
    {
        if (Math.Abs(theta) < 1e-3)
        {
            return (1 - (theta / 2) + (theta * theta / 12), -0.5 + (theta / 6));
        }

        double exponential = Math.Exp(theta);
        double denominator = exponential - 1;
        return (theta / denominator, (denominator - (theta * exponential)) / (denominator * denominator));
    }
}
