namespace BoothWatch.Film;

internal sealed partial class DryingFilm
{
    /// <summary>Jacobian entry: film temperature rate by the first cell, as of the last <see cref="Jacobian"/>.</summary>
    public double FilmBySubstrate { get; private set; }

    /// <summary>The dense core block of the Jacobian, row by row, at the state evaluated last.</summary>
    public void Jacobian(Span<double> core)
    {
        ref readonly Moment m = ref _moment;
        double polymer = PolymerVolume / m.Volume;
        double blendSlope = (1 + (2 * _parameters.Chi * polymer) - (1 / (1 - polymer))) * -polymer / m.Volume;
        double shareByTemperature = 0;
        for (int i = 0; i < _solvents; i++)
        {
            shareByTemperature += _pressure[i] * _slope[i] / _pressurePa;
            core[(i * CoreSize) + WaterIndex] = 0;
        }

        double saturationNow = (1 - m.Dryness) * m.Saturation;
        double waterByTotal = ((saturationNow * (m.OutflowSlope + 1)) - (_airVapourPa * m.OutflowSlope)) / _pressurePa;
        for (int j = 0; j < _solvents; j++)
        {
            // Every pressure scales by (blend slope v_j - 1/moles) with the moles of j, the j-th also by its own amount.
            double common = (blendSlope * _molarVolume[j]) - (1 / m.Moles);
            double shareByMoles = (_pressureByMoles[j] / _pressurePa) + (m.Share * common);
            Sums sums = default;
            for (int i = 0; i < _solvents; i++)
            {
                double pressureByMoles = (_pressure[i] * common) + (i == j ? _pressureByMoles[i] : 0);
                double byMoles = _conductance[i] * ((pressureByMoles * m.Stefan) + (_pressure[i] * m.StefanSlope * shareByMoles));
                core[(i * CoreSize) + j] = -byMoles;
                sums.Add(byMoles, _liquidHeatCapacity[i], _heat[i] + (_heatSlope[i] * m.TemperatureK));
            }

            double waterByMoles = waterByTotal * sums.Total;
            core[(WaterIndex * CoreSize) + j] = -waterByMoles;
            core[(TemperatureIndex * CoreSize) + j] =
                (ConvectionBy(sums) - sums.Latent - (waterByMoles * m.WaterHeat) - (m.TemperatureRate * _liquidHeatCapacity[j])) / m.Capacity;
        }

        Sums byTemperature = default;
        for (int i = 0; i < _solvents; i++)
        {
            double by = _conductance[i] * _pressure[i] * ((_slope[i] * m.Stefan) + (m.StefanSlope * shareByTemperature));
            core[(i * CoreSize) + TemperatureIndex] = -by;
            byTemperature.Add(by, _liquidHeatCapacity[i], _heat[i] + (_heatSlope[i] * m.TemperatureK));
            byTemperature.Latent += _conductance[i] * _pressure[i] * m.Stefan * _heatSlope[i];
        }

        double waterByWater = _waterConductance * m.Saturation * m.Dryness / _waterSmoothingMol * (m.OutflowB + m.Outflow);
        double waterByTemperature = (_waterConductance * (1 - m.Dryness) * m.SaturationSlope * (m.OutflowB + m.Outflow))
            + (waterByTotal * byTemperature.Total);
        core[(WaterIndex * CoreSize) + WaterIndex] = -waterByWater;
        core[(WaterIndex * CoreSize) + TemperatureIndex] = -waterByTemperature;
        core[(TemperatureIndex * CoreSize) + WaterIndex] =
            ((-waterByWater * m.WaterHeat) - (m.TemperatureRate * WaterLiquidHeatCapacity)) / m.Capacity;
        core[(TemperatureIndex * CoreSize) + TemperatureIndex] =
            (ConvectionBy(byTemperature) - (_convection * m.Ackermann) - _radiation - byTemperature.Latent
                - (waterByTemperature * m.WaterHeat) - (m.WaterFlux * WaterHeatSlope) - _grid.Conductance[0]) / m.Capacity;
        FilmBySubstrate = _grid.Conductance[0] / m.Capacity;
    }

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

    /// <summary>Change of convective heat through the Ackermann correction.</summary>
    private double ConvectionBy(in Sums sums) =>
        _moment.AckermannSlope * sums.Sensible * _parameters.VapourHeatCapacityRatio * (_airK - _moment.TemperatureK);

    /// <summary>Sums over the solvents of flux changes: moles, sensible heat a kelvin, heat of vaporisation.</summary>
    private struct Sums
    {
        public double Total;
        public double Sensible;
        public double Latent;

        public void Add(double flux, double heatCapacity, double heat)
        {
            Total += flux;
            Sensible += flux * heatCapacity;
            Latent += flux * heat;
        }
    }
}
