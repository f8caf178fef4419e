namespace BoothWatch.Air;

public static partial class SaturationPressure
{
    /// <summary>Saturation pressure over liquid and supercooled water after Murphy and Koop, Pa.</summary>
    /// <param name="temperatureK">Temperature, K, 123 to 332; not checked.</param>
    /// <remarks>
    /// ln p = 54.842763 - 6763.22/T - 4.210 ln T + 0.000367 T
    /// + tanh(0.0415 (T - 218.8)) (53.878 - 1331.22/T - 9.44523 ln T + 0.014025 T).
    /// Source: D. M. Murphy and T. Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539-1565, equation (10),
    /// doi 10.1256/qj.04.94. Worked example: 253.15 K gives 125.5 Pa.
    /// </remarks>
    public static double MurphyKoop(double temperatureK)
    {
        double logarithm = Math.Log(temperatureK);
        double cold = 53.878 - (1331.22 / temperatureK) - (9.44523 * logarithm) + (0.014025 * temperatureK);
        return Math.Exp(54.842763 - (6763.22 / temperatureK) - (4.210 * logarithm) + (0.000367 * temperatureK)
            + (Math.Tanh(0.0415 * (temperatureK - 218.8)) * cold));
    }

    /// <summary>Saturation pressure over liquid and supercooled water after Murphy and Koop, Pa, and its slope.</summary>
    /// <param name="temperatureK">As in <see cref="MurphyKoop(double)"/>.</param>
    /// <param name="slopePaPerK">The derivative with respect to temperature, Pa/K (analytic).</param>
    public static double MurphyKoop(double temperatureK, out double slopePaPerK)
    {
        double inverse = 1 / temperatureK;
        double logarithm = Math.Log(temperatureK);
        double step = Math.Tanh(0.0415 * (temperatureK - 218.8));
        double cold = 53.878 - (1331.22 * inverse) - (9.44523 * logarithm) + (0.014025 * temperatureK);
        double coldSlope = (1331.22 * inverse * inverse) - (9.44523 * inverse) + 0.014025;
        double pressurePa = Math.Exp(54.842763 - (6763.22 * inverse) - (4.210 * logarithm) + (0.000367 * temperatureK)
            + (step * cold));
        slopePaPerK = pressurePa * ((6763.22 * inverse * inverse) - (4.210 * inverse) + 0.000367
            + (0.0415 * (1 - (step * step)) * cold) + (step * coldSlope));
        return pressurePa;
    }
}
