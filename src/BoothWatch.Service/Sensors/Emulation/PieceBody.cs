namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>The piece of the scripted shop: a plane body of wood with air on both faces, in layers from a face to its middle.</summary>
/// <remarks>dT/dt of a layer = (heat in - heat out) / (ρ c · thickness), in steps short enough for the explicit rule (α dt/dx² below 0.5).</remarks>
internal sealed class PieceBody
{
    /// <summary>Thickness, mm: a solid body.</summary>
    public const double ThicknessMm = 45;

    private const int Layers = 6;

    /// <summary>Wood across the grain: conductivity, W/(m K), and heat capacity, J/(m³ K). As in config/materials.</summary>
    private const double ConductivityWPerMK = 0.15;
    private const double HeatCapacityJPerM3K = 770_000;

    /// <summary>Convection and radiation in slowly moving air, W/(m² K). Assumed.</summary>
    private const double FaceWPerM2K = 13;

    private const double LayerM = ThicknessMm / 1000 / 2 / Layers;
    private const double BetweenWPerM2K = ConductivityWPerMK / LayerM;
    private const double FaceToLayerWPerM2K = 1 / ((1 / FaceWPerM2K) + (LayerM / 2 / ConductivityWPerMK));

    private readonly double[] _layerC = new double[Layers];
    private double _airC;

    /// <summary>A body of one temperature that is brought into an air.</summary>
    public PieceBody(double temperatureC, double airC)
    {
        Array.Fill(_layerC, temperatureC);
        _airC = airC;
    }

    /// <summary>Temperature of a face, °C: what an infrared sensor sees.</summary>
    public double SurfaceC => _layerC[0] + ((_airC - _layerC[0]) * (1 - (FaceToLayerWPerM2K / FaceWPerM2K)));

    /// <summary>Moves it on.</summary>
    /// <param name="airC">Air temperature, °C.</param>
    /// <param name="seconds">For how long, s, at most 10.</param>
    public void Step(double airC, double seconds)
    {
        _airC = airC;
        double perJPerM2K = seconds / (HeatCapacityJPerM3K * LayerM);
        double inW = FaceToLayerWPerM2K * (airC - _layerC[0]);
        for (int i = 0; i < Layers; i++)
        {
            double outW = i + 1 < Layers ? BetweenWPerM2K * (_layerC[i] - _layerC[i + 1]) : 0;
            _layerC[i] += (inW - outW) * perJPerM2K;
            inW = outW;
        }
    }
}
