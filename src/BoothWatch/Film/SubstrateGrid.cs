namespace BoothWatch.Film;

/// <summary>Finite volumes through the substrate, thin under the film and growing geometrically towards the back.</summary>
internal sealed class SubstrateGrid
{
    private const double FirstCellSeconds = 0.02;

    private readonly double _lastHalfCell;

    /// <summary>Builds the grid; call <see cref="ExposeBack"/> before using it.</summary>
    /// <param name="substrate">The substrate.</param>
    /// <param name="cells">Number of cells.</param>
    public SubstrateGrid(Substrate substrate, int cells)
    {
        double firstCell = Math.Sqrt(substrate.ConductivityWPerMK / substrate.VolumetricHeatCapacityJPerM3K * FirstCellSeconds) * 12 / cells;
        double ratio = Ratio(substrate.ThicknessM, firstCell, cells);
        double[] width = new double[cells];
        double sum = 0;
        for (int i = 0; i < cells; i++)
        {
            width[i] = Math.Pow(ratio, i);
            sum += width[i];
        }

        Capacity = new double[cells];
        Conductance = new double[cells + 1];
        for (int i = 0; i < cells; i++)
        {
            width[i] *= substrate.ThicknessM / sum;
            Capacity[i] = width[i] * substrate.VolumetricHeatCapacityJPerM3K;
        }

        Conductance[0] = 2 * substrate.ConductivityWPerMK / width[0];
        for (int i = 1; i < cells; i++)
        {
            Conductance[i] = 2 * substrate.ConductivityWPerMK / (width[i - 1] + width[i]);
        }

        _lastHalfCell = width[cells - 1] / (2 * substrate.ConductivityWPerMK);
    }

    /// <summary>Heat capacity of each cell, J/(m² K).</summary>
    public double[] Capacity { get; }

    /// <summary>Conductance film to first cell, cell to cell, last cell to air, W/(m² K).</summary>
    public double[] Conductance { get; }

    /// <summary>Sets what lies between the back face and the air.</summary>
    /// <param name="backConductance">Heat-transfer coefficient, W/(m² K).</param>
    public void ExposeBack(double backConductance) => Conductance[^1] = 1 / (_lastHalfCell + (1 / backConductance));

    private static double Ratio(double thickness, double firstCell, int cells)
    {
        if (firstCell * cells >= thickness)
        {
            return 1;
        }

        double low = 1;
        double high = 10;
        for (int i = 0; i < 60; i++)
        {
            double ratio = (low + high) / 2;
            double sum = firstCell * (Math.Pow(ratio, cells) - 1) / (ratio - 1);
            (low, high) = sum < thickness ? (ratio, high) : (low, ratio);
        }

        return (low + high) / 2;
    }
}
