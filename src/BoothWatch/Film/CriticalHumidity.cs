using BoothWatch.Air;

namespace BoothWatch.Film;

/// <summary>The humidity at which blush just begins. It depends on the coat, the air temperature and the piece, not on the humidity now.</summary>
/// <remarks>
/// Solver: the dew point at which free water at set equals the tolerance. Below it water is next to nothing, above it water grows nearly
/// in proportion, so the search comes down from the film temperature at set of a dry run by secants through the two lowest dew points
/// that blush, and bisects where a secant lands on the dry side. Each trial is one drying run; at most <see cref="MostRuns"/>.
/// </remarks>
public static class CriticalHumidity
{
    /// <summary>Accuracy of the critical dew point, °C (0.03 % RH at 20 °C).</summary>
    public const double AccuracyC = 0.004;

    /// <summary>Most drying runs for one answer.</summary>
    public const int MostRuns = 60;

    /// <summary>How far beyond saturation the search goes before it takes the coat as safe in any air, °C of dew point.</summary>
    internal const double BeyondSaturationC = 3;

    /// <summary>Finds the critical humidity.</summary>
    /// <param name="conditions">The coat and its surroundings.</param>
    /// <param name="parameters">Model parameters; null: <see cref="FilmParameters.Default"/>.</param>
    /// <exception cref="ArgumentException">A condition is out of range; the message names it.</exception>
    /// <exception cref="DryingFailedException">A drying run or the search failed.</exception>
    public static CriticalPoint Find(CoatConditions conditions, FilmParameters? parameters = null)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        return Cap(FindBlushDewPointC(conditions, parameters ?? FilmParameters.Default), conditions.AirTemperatureC, conditions.PieceTemperatureC);
    }

    /// <summary>Bounds the dew point at which the film blushes by what air and piece allow.</summary>
    internal static CriticalPoint Cap(double blushDewPointC, double airTemperatureC, double pieceTemperatureC)
    {
        double cap = Math.Min(airTemperatureC, pieceTemperatureC);
        if (blushDewPointC < cap)
        {
            return At(blushDewPointC, CriticalLimit.Blush, airTemperatureC);
        }

        return pieceTemperatureC < airTemperatureC
            ? At(pieceTemperatureC, CriticalLimit.Dew, airTemperatureC)
            : new CriticalPoint(100, airTemperatureC, CriticalLimit.Saturation);
    }

    /// <summary>The dew point at which the film itself just blushes, °C, uncapped; <see cref="BeyondSaturationC"/> over the air temperature when it does not blush below that.</summary>
    /// <param name="conditions">The coat.</param>
    /// <param name="parameters">Model parameters.</param>
    /// <param name="nearC">A dew point known to be near the answer, or NaN.</param>
    internal static double FindBlushDewPointC(CoatConditions conditions, FilmParameters parameters, double nearC = double.NaN)
    {
        double highest = conditions.AirTemperatureC + BeyondSaturationC;
        BlushSearch search = new(
            dewPointC => DryingRun.Simulate(conditions, SaturationPressure.OverWater(dewPointC), parameters).WaterAtSetGPerM2,
            parameters.BlushToleranceGPerM2,
            highest);
        if (double.IsNaN(nearC))
        {
            DryingResult dry = DryingRun.Simulate(conditions, 0, parameters);
            double high = Math.Min(highest, dry.LastFilmTemperatureC);
            return search.Run(high, Math.Max(0.1, (high - dry.LowestFilmTemperatureC) / 4));
        }

        return search.Run(Math.Min(highest, nearC + 0.15), 0.1);
    }

    private static CriticalPoint At(double dewPointC, CriticalLimit limit, double airTemperatureC) => new(
        100 * SaturationPressure.OverWater(dewPointC) / SaturationPressure.OverWater(airTemperatureC), dewPointC, limit);
}
