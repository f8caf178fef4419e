using System.Globalization;

namespace BoothWatch.Film;

/// <summary>The humidity at which blush just begins. It depends on the coat, the air temperature and the piece, not on the humidity now.</summary>
/// <remarks>
/// Solver: the dew point at which free water at set equals the tolerance. A dry run brackets it between the lowest film temperature and
/// the film temperature at set; then the ITP method (Oliveira and Takahashi, ACM Trans. Math. Softw. 47(1), 2020) on the logarithm of
/// water over tolerance. Each trial is one drying run; at most <see cref="MostRuns"/>.
/// </remarks>
public static class CriticalHumidity
{
    /// <summary>Accuracy of the critical dew point, °C (0.03 % RH at 20 °C).</summary>
    public const double AccuracyC = 0.004;

    /// <summary>Most drying runs for one answer.</summary>
    public const int MostRuns = 60;

    /// <summary>How far beyond saturation the search goes before it takes the coat as safe in any air, °C of dew point.</summary>
    internal const double BeyondSaturationC = 3;

    private const double LeastWaterGPerM2 = 1e-7;

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
        Search search = new(conditions, parameters);
        double highest = conditions.AirTemperatureC + BeyondSaturationC;
        double low;
        double high;
        double width;
        if (double.IsNaN(nearC))
        {
            DryingResult dry = DryingRun.Simulate(conditions, 0, parameters);
            low = dry.LowestFilmTemperatureC - 0.5;
            high = Math.Min(highest, Math.Max(dry.LastFilmTemperatureC, low + 1));
            width = 1;
        }
        else
        {
            low = nearC - 0.1;
            high = Math.Min(highest, nearC + 0.1);
            width = 0.3;
        }

        double below = search.At(low);
        for (double step = width; below > 0; step *= 2)
        {
            (high, low) = (low, low - step);
            below = search.At(low);
        }

        double above = search.At(high);
        for (double step = width; above < 0; step *= 2)
        {
            if (high >= highest)
            {
                return highest;
            }

            (low, below) = (high, above);
            high = Math.Min(highest, high + step);
            above = search.At(high);
        }

        return search.Itp(low, below, high, above);
    }

    private static CriticalPoint At(double dewPointC, CriticalLimit limit, double airTemperatureC) => new(
        100 * WaterVapour.SaturationPa(dewPointC) / WaterVapour.SaturationPa(airTemperatureC), dewPointC, limit);

    private sealed class Search(CoatConditions conditions, FilmParameters parameters)
    {
        private int _runs;

        /// <summary>ln(water at set / tolerance): negative without blush, positive with.</summary>
        public double At(double dewPointC)
        {
            if (++_runs > MostRuns)
            {
                throw new DryingFailedException(string.Create(
                    CultureInfo.InvariantCulture, $"critical humidity (ITP): no bracket or root within {MostRuns} drying runs, last dew point {dewPointC:0.##} °C"));
            }

            double water = DryingRun.Simulate(conditions, WaterVapour.SaturationPa(dewPointC), parameters).WaterAtSetGPerM2;
            return Math.Log(Math.Max(water, LeastWaterGPerM2) / parameters.BlushToleranceGPerM2);
        }

        public double Itp(double low, double below, double high, double above)
        {
            double truncation = 0.2 / (high - low);
            int bisections = (int)Math.Ceiling(Math.Log2((high - low) / (2 * AccuracyC))) + 1;
            for (int j = 0; high - low > 2 * AccuracyC; j++)
            {
                double middle = (low + high) / 2;
                double radius = (AccuracyC * Math.Pow(2, bisections - j)) - ((high - low) / 2);
                double secant = ((above * low) - (below * high)) / (above - below);
                double sign = Math.Sign(middle - secant);
                double shift = truncation * (high - low) * (high - low);
                double candidate = shift <= Math.Abs(middle - secant) ? secant + (sign * shift) : middle;
                double x = Math.Abs(candidate - middle) <= radius ? candidate : middle - (sign * Math.Max(radius, 0));
                double value = At(x);
                if (value > 0)
                {
                    (high, above) = (x, value);
                }
                else
                {
                    (low, below) = (x, value);
                }
            }

            return ((above * low) - (below * high)) / (above - below);
        }
    }
}
