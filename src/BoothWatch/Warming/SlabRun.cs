using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Warming;

/// <summary>A plane body with both faces in moist air, from one temperature throughout, step by step.</summary>
/// <remarks>
/// Half of the body is reckoned, from a face to its middle, through which no heat flows. At the face: convection and radiation with
/// surroundings as warm as the air, and the heat of the water that condenses on it while it is below the dew point and leaves again above.
/// Steps are implicit (backward Euler) and grow with time, so that a decay is followed within about half a percent.
/// Left out: freezing of that water, water that soaks in, corners and edges, which warm sooner.
/// </remarks>
internal sealed class SlabRun
{
    private const int Cells = 16;
    private const double FirstStepS = 0.25;
    private const double StepShare = 0.02;

    private readonly SubstrateGrid _grid;
    private readonly double _airC;
    private readonly double _airVapourPa;
    private readonly double _waterConductance;
    private readonly double[] _cellC = new double[Cells];
    private readonly double[] _upper = new double[Cells];
    private readonly double[] _right = new double[Cells];
    private double _waterMol;

    /// <summary>The body as it is brought in.</summary>
    /// <param name="body">The body, its whole thickness.</param>
    /// <param name="airC">Temperature of the air and of all around, °C.</param>
    /// <param name="airVapourPa">Partial pressure of water vapour in the air, Pa.</param>
    /// <param name="transferWPerM2K">Heat transfer by convection and radiation, W/(m² K).</param>
    /// <param name="waterConductance">Transfer of water vapour, mol/(m² s Pa).</param>
    /// <param name="startC">Its temperature throughout, °C.</param>
    public SlabRun(Substrate body, double airC, double airVapourPa, double transferWPerM2K, double waterConductance, double startC)
    {
        _airC = airC;
        _airVapourPa = airVapourPa;
        _waterConductance = waterConductance;
        TransferWPerM2K = transferWPerM2K;
        _grid = new SubstrateGrid(body with { ThicknessM = body.ThicknessM / 2 }, Cells);
        _grid.ExposeBack(0);
        Array.Fill(_cellC, startC);
        SurfaceC = startC;
    }

    /// <summary>Heat transfer by convection and radiation, W/(m² K).</summary>
    public double TransferWPerM2K { get; }

    /// <summary>Time since it was brought in, s.</summary>
    public double TimeS { get; private set; }

    /// <summary>Temperature of its faces, °C.</summary>
    public double SurfaceC { get; private set; }

    /// <summary>Temperature of its middle, °C.</summary>
    public double CoreC => _cellC[^1];

    /// <summary>Water that lies on a face, g/m².</summary>
    public double DewGPerM2 => DryingFilm.MolesToGrams(_waterMol);

    /// <summary>The same in moving air.</summary>
    /// <param name="body">The body, its whole thickness.</param>
    /// <param name="air">The air around it.</param>
    /// <param name="airSpeedMPerS">Air speed over it, m/s, zero or more.</param>
    /// <param name="lengthM">Its length along the stream, m.</param>
    /// <param name="startC">Its temperature throughout, °C.</param>
    public static SlabRun In(Substrate body, MoistAir air, double airSpeedMPerS, double lengthM, double startC)
    {
        double convection = AirSideTransfer.Convection(airSpeedMPerS, lengthM, air.TemperatureC, air.PressurePa);
        double diffusivity = FullerDiffusivity.InAirM2PerS(
            PhysicalConstants.WaterMolarMassKgPerMol, FullerDiffusivity.WaterVolumeCm3PerMol, air.TemperatureC, air.PressurePa);
        return new SlabRun(
            body,
            air.TemperatureC,
            air.VapourPressurePa,
            convection + AirSideTransfer.Radiation(FilmParameters.Default.Emissivity, air.TemperatureC),
            AirSideTransfer.MassConductance(convection, diffusivity, air.TemperatureC, air.PressurePa),
            startC);
    }

    /// <summary>Goes on by one step, at most to a time.</summary>
    /// <param name="notBeyondS">The latest time to go to, s.</param>
    public void Step(double notBeyondS = double.PositiveInfinity)
    {
        double stepS = Math.Min(Math.Max(FirstStepS, StepShare * TimeS), notBeyondS - TimeS);
        double heat = DryingFilm.WaterHeatAt0C + (DryingFilm.WaterHeatSlope * SurfaceC);
        double saturationPa = SaturationPressure.OverWater(SurfaceC, out double slopePaPerK);
        bool isWet = _airVapourPa > saturationPa || _waterMol > 0;

        // Flux into the face = gain - loss · its temperature, the saturation pressure taken along its tangent.
        double loss = TransferWPerM2K + (isWet ? heat * _waterConductance * slopePaPerK : 0);
        double gain = (TransferWPerM2K * _airC)
            + (isWet ? heat * _waterConductance * (_airVapourPa - saturationPa + (slopePaPerK * SurfaceC)) : 0);
        double inner = _grid.Conductance[0];
        double through = inner / (inner + loss);
        Solve(stepS, loss * through, gain * through);
        double before = SurfaceC;
        SurfaceC = (gain + (inner * _cellC[0])) / (inner + loss);
        if (isWet)
        {
            double flux = _waterConductance * (_airVapourPa - saturationPa - (slopePaPerK * (SurfaceC - before)));
            _waterMol = Math.Max(0, _waterMol + (flux * stepS));
        }

        TimeS += stepS;
    }

    // Tridiagonal, by elimination from the face to the middle.
    private void Solve(double stepS, double faceLoss, double faceGain)
    {
        double lower = 0;
        for (int i = 0; i < Cells; i++)
        {
            double capacity = _grid.Capacity[i] / stepS;
            double next = _grid.Conductance[i + 1];
            double diagonal = capacity + next + (i == 0 ? faceLoss : lower * (1 - _upper[i - 1]));
            double right = (capacity * _cellC[i]) + (i == 0 ? faceGain : lower * _right[i - 1]);
            _upper[i] = next / diagonal;
            _right[i] = right / diagonal;
            lower = next;
        }

        _cellC[Cells - 1] = _right[Cells - 1];
        for (int i = Cells - 2; i >= 0; i--)
        {
            _cellC[i] = _right[i] + (_upper[i] * _cellC[i + 1]);
        }
    }
}
