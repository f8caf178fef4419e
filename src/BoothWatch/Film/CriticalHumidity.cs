using System.Globalization;
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
        if (double.IsNaN(nearC))
        {
            DryingResult dry = DryingRun.Simulate(conditions, 0, parameters);
            double high = Math.Min(highest, dry.LastFilmTemperatureC);
            return new Search(conditions, parameters, highest).Run(high, Math.Max(0.1, (high - dry.LowestFilmTemperatureC) / 4));
        }

        return new Search(conditions, parameters, highest).Run(Math.Min(highest, nearC + 0.15), 0.1);
    }

    private static CriticalPoint At(double dewPointC, CriticalLimit limit, double airTemperatureC) => new(
        100 * SaturationPressure.OverWater(dewPointC) / SaturationPressure.OverWater(airTemperatureC), dewPointC, limit);

    private sealed class Search(CoatConditions conditions, FilmParameters parameters, double highest)
    {
        private double _low = double.NegativeInfinity;
        private double _high;
        private double _above = double.NaN;
        private double _earlierHigh;
        private double _earlierAbove = double.NaN;
        private int _runs;

        /// <summary>Runs the search.</summary>
        /// <param name="startC">First trial, °C, at most <c>highest</c>.</param>
        /// <param name="stepC">First step while one side is unknown, °C.</param>
        public double Run(double startC, double stepC)
        {
            double trial = startC;
            for (; ; )
            {
                if (!Blushes(trial))
                {
                    if (trial >= highest)
                    {
                        return highest;
                    }

                    _low = trial;
                }

                bool noHigh = double.IsNaN(_above);
                if (noHigh)
                {
                    trial = Math.Min(highest, trial + stepC);
                    stepC *= 2;
                    continue;
                }

                if (double.IsNaN(_earlierAbove))
                {
                    trial = double.IsInfinity(_low) ? _high - stepC : (_low + _high) / 2;
                }
                else
                {
                    double secant = _high - (_above * (_earlierHigh - _high) / (_earlierAbove - _above));
                    if (!(_earlierAbove > _above) || secant <= _low)
                    {
                        secant = double.IsInfinity(_low) ? _high - (stepC *= 2) : (_low + _high) / 2;
                    }
                    else if (_high - secant < AccuracyC)
                    {
                        return secant;
                    }

                    trial = secant;
                }

                if (_high - _low < AccuracyC)
                {
                    return trial;
                }
            }
        }

        /// <summary>One drying run. Remembers the two nearest dew points that blush, with the water they leave over the tolerance.</summary>
        private bool Blushes(double dewPointC)
        {
            if (++_runs > MostRuns)
            {
                throw new DryingFailedException(string.Create(
                    CultureInfo.InvariantCulture, $"critical humidity (secant with bisection): no root within {MostRuns} drying runs, last dew point {dewPointC:0.##} °C"));
            }

            double water = DryingRun.Simulate(conditions, SaturationPressure.OverWater(dewPointC), parameters).WaterAtSetGPerM2;
            if (water <= parameters.BlushToleranceGPerM2)
            {
                return false;
            }

            (_earlierHigh, _earlierAbove) = (_high, _above);
            (_high, _above) = (dewPointC, water - parameters.BlushToleranceGPerM2);
            return true;
        }
    }
}
