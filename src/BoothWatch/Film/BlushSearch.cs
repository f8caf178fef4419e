using System.Globalization;

namespace BoothWatch.Film;

/// <summary>Finds the dew point at which free water at set equals the tolerance; <see cref="CriticalHumidity"/> says how.</summary>
/// <param name="waterAtSet">One drying run: the free water at set, g/m², for a dew point, °C.</param>
/// <param name="toleranceGPerM2">Free water above which the film is blushed, g/m².</param>
/// <param name="highest">Dew point at which the search gives up and takes the coat as safe, °C.</param>
internal sealed class BlushSearch(Func<double, double> waterAtSet, double toleranceGPerM2, double highest)
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
                else if (_high - secant < CriticalHumidity.AccuracyC)
                {
                    return secant;
                }

                trial = secant;
            }

            if (_high - _low < CriticalHumidity.AccuracyC)
            {
                return trial;
            }
        }
    }

    /// <summary>One drying run. Remembers the two nearest dew points that blush, with the water they leave over the tolerance.</summary>
    private bool Blushes(double dewPointC)
    {
        if (++_runs > CriticalHumidity.MostRuns)
        {
            throw new DryingFailedException(string.Create(
                CultureInfo.InvariantCulture, $"critical humidity (secant with bisection): no root within {CriticalHumidity.MostRuns} drying runs, last dew point {dewPointC:0.##} °C"));
        }

        double water = waterAtSet(dewPointC);
        if (water <= toleranceGPerM2)
        {
            return false;
        }

        (_earlierHigh, _earlierAbove) = (_high, _above);
        (_high, _above) = (dewPointC, water - toleranceGPerM2);
        return true;
    }
}
