using BoothWatch.Air;
using BoothWatch.Solvents;

namespace BoothWatch.Film;

internal sealed partial class DryingFilm
{
    private Moment _moment;

    /// <summary>Rates of change of the state. <see cref="Jacobian"/> belongs to the state given here last.</summary>
    public void Evaluate(ReadOnlySpan<double> state, Span<double> rate)
    {
        ref Moment m = ref _moment;
        m.TemperatureK = state[TemperatureIndex];
        double lnTemperature = Math.Log(m.TemperatureK);
        m.Moles = 0;
        m.Volume = PolymerVolume;
        m.Capacity = _polymerHeatCapacity + (state[WaterIndex] * WaterLiquidHeatCapacity);
        for (int i = 0; i < _solvents; i++)
        {
            m.Moles += state[i];
            m.Volume += state[i] * _molarVolume[i];
            m.Capacity += state[i] * _liquidHeatCapacity[i];
        }

        // Flory-Huggins activity of the solvent blend over the polymer: ln a = ln(1-φ) + φ + χ φ².
        double polymer = PolymerVolume / m.Volume;
        double blend = (1 - polymer) * Math.Exp(polymer + (_parameters.Chi * polymer * polymer));
        m.Share = 0;
        for (int i = 0; i < _solvents; i++)
        {
            (double ln, double slope) = _vapourPressure[i].Ln(m.TemperatureK, lnTemperature);
            _pressureByMoles[i] = blend * Math.Exp(ln) / m.Moles;
            _pressure[i] = _pressureByMoles[i] * state[i];
            _slope[i] = slope;
            m.Share += _pressure[i] / _pressurePa;
        }

        (m.Stefan, m.StefanSlope) = Stefan(m.Share);
        double total = 0;
        double sensible = 0;
        double latent = 0;
        for (int i = 0; i < _solvents; i++)
        {
            double flux = _conductance[i] * _pressure[i] * m.Stefan;
            rate[i] = -flux;
            total += flux;
            sensible += flux * _liquidHeatCapacity[i];
            latent += flux * (_heat[i] + (_heatSlope[i] * m.TemperatureK));
        }

        // Water crosses the outflow of solvent vapour (film theory): N = F (a p_sat (B + θ) - p_air B), B = θ/(e^θ - 1).
        m.Outflow = total / (_waterConductance * _pressurePa);
        (m.OutflowB, m.OutflowSlope) = Bernoulli(m.Outflow);
        m.Saturation = SaturationPressure.OverWater(m.TemperatureK - PhysicalConstants.ZeroCelsiusK, out m.SaturationSlope);
        m.Dryness = Math.Exp(-state[WaterIndex] / _waterSmoothingMol);
        m.WaterFlux = _waterConductance * (((1 - m.Dryness) * m.Saturation * (m.OutflowB + m.Outflow)) - (_airVapourPa * m.OutflowB));
        m.WaterHeat = WaterHeatAt0C + (WaterHeatSlope * (m.TemperatureK - PhysicalConstants.ZeroCelsiusK));
        rate[WaterIndex] = -m.WaterFlux;

        // Heat: convection (less while vapour streams out, Ackermann), radiation, evaporation, conduction.
        (m.Ackermann, m.AckermannSlope) = Bernoulli(sensible * _parameters.VapourHeatCapacityRatio / _convection);
        double below = _grid.Conductance[0] * (state[CoreSize] - m.TemperatureK);
        double gain = (((_convection * m.Ackermann) + _radiation) * (_airK - m.TemperatureK)) - latent - (m.WaterFlux * m.WaterHeat) + below;
        m.TemperatureRate = gain / m.Capacity;
        rate[TemperatureIndex] = m.TemperatureRate;

        double outward = below;
        int last = Cells - 1;
        for (int i = 0; i <= last; i++)
        {
            double next = i < last ? state[CoreSize + i + 1] : _airK;
            double inward = _grid.Conductance[i + 1] * (next - state[CoreSize + i]);
            rate[CoreSize + i] = (inward - outward) / _grid.Capacity[i];
            outward = inward;
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

    /// <summary>What the Jacobian needs of the last evaluation.</summary>
    private struct Moment
    {
        public double TemperatureK;
        public double Moles;
        public double Volume;
        public double Capacity;
        public double Share;
        public double Stefan;
        public double StefanSlope;
        public double Outflow;
        public double OutflowB;
        public double OutflowSlope;
        public double Saturation;
        public double SaturationSlope;
        public double Dryness;
        public double WaterFlux;
        public double WaterHeat;
        public double Ackermann;
        public double AckermannSlope;
        public double TemperatureRate;
    }
}
