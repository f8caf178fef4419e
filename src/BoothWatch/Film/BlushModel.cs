using BoothWatch.Air;

namespace BoothWatch.Film;

/// <summary>The drying-film model, asked the finisher's questions: will this coat blush, by how much not, and which retarder level holds.</summary>
public sealed class BlushModel
{
    /// <summary>Answers for the loaded retarder level, or for the recommended one when none is loaded (the highest when none serves).</summary>
    /// <param name="plan">The coat.</param>
    /// <param name="air">The booth air.</param>
    /// <param name="pieceTemperatureC">Temperature of the piece when the coat lands, °C.</param>
    /// <param name="airUncertainty">Standard uncertainty of the air.</param>
    /// <param name="pieceUncertaintyC">Standard uncertainty of the piece temperature, °C.</param>
    /// <param name="requiredMarginC">Margin that policy requires beyond the uncertainty, °C.</param>
    /// <param name="coverageFactor">Factor from standard to expanded uncertainty.</param>
    public BlushAnswer Assess(
        CoatPlan plan,
        MoistAir air,
        double pieceTemperatureC,
        AirUncertainty airUncertainty,
        double pieceUncertaintyC,
        double requiredMarginC,
        double coverageFactor) => throw new NotImplementedException();
}
