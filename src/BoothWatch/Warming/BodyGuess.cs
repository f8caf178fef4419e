using BoothWatch.Air;
using BoothWatch.Film;

namespace BoothWatch.Warming;

/// <summary>What thickness and material make likely of the warming of a piece.</summary>
/// <param name="Biot">Biot number, h L / k.</param>
/// <param name="ConstantS">Time constant of its slowest decay, s.</param>
public readonly record struct BodyGuess(double Biot, double ConstantS)
{
    /// <summary>Standard deviation of the logarithm of both: a factor of two, for shape, draught and wood of another density. Own choice.</summary>
    private const double Spread = 0.7;

    /// <summary>What counts for every body however unlikely, as a share of the likeliest: the thickness in the settings may be that of another piece.</summary>
    private const double Anything = 0.03;

    /// <summary>A smaller Biot number is none: the body warms as one.</summary>
    private const double LeastBiot = 0.12;

    /// <summary>The guess for a body in moving air.</summary>
    /// <param name="body">The piece, its whole thickness, both faces in the air.</param>
    /// <param name="air">The air.</param>
    /// <param name="airSpeedMPerS">Air speed over the piece, m/s.</param>
    public static BodyGuess Of(Substrate body, MoistAir air, double airSpeedMPerS)
    {
        ArgumentNullException.ThrowIfNull(body);
        double halfM = body.ThicknessM / 2;
        double biot = SlabRun.In(body, air, airSpeedMPerS, SlabWarming.LengthM, 0).TransferWPerM2K * halfM / body.ConductivityWPerMK;
        double root = PlaneWallModes.Root(biot, 0);
        return new BodyGuess(biot, halfM * halfM * body.VolumetricHeatCapacityJPerM3K / body.ConductivityWPerMK / (root * root));
    }

    /// <summary>How likely a body is, 1 for the likeliest.</summary>
    public double Likelihood(double biot, double constantS)
    {
        double byBiot = Math.Log(Math.Max(biot, LeastBiot) / Math.Max(Biot, LeastBiot)) / Spread;
        double byTime = Math.Log(constantS / ConstantS) / Spread;
        return Anything + ((1 - Anything) * Math.Exp(-((byBiot * byBiot) + (byTime * byTime)) / 2));
    }
}
