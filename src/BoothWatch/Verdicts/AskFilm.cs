using BoothWatch.Air;
using BoothWatch.Film;

namespace BoothWatch.Verdicts;

/// <summary>The question that the assessor puts to the film model; <see cref="BlushModel.Assess"/> answers it.</summary>
/// <param name="plan">The coat.</param>
/// <param name="air">The booth air.</param>
/// <param name="pieceTemperatureC">Temperature of the piece, °C.</param>
/// <param name="airUncertainty">Standard uncertainty of the air.</param>
/// <param name="pieceUncertaintyC">Standard uncertainty of the piece temperature, °C.</param>
/// <param name="requiredMarginC">Margin that policy requires beyond the uncertainty, °C.</param>
/// <param name="coverageFactor">Factor from standard to expanded uncertainty.</param>
/// <exception cref="DryingFailedException">The solver gave up; there is no answer.</exception>
public delegate BlushAnswer AskFilm(
    CoatPlan plan,
    MoistAir air,
    double pieceTemperatureC,
    AirUncertainty airUncertainty,
    double pieceUncertaintyC,
    double requiredMarginC,
    double coverageFactor);
