namespace BoothWatch.Air;

/// <summary>Dew and frost point: the temperature at which a vapour pressure saturates.</summary>
public static class DewPoint
{
    /// <summary>Lowest dew or frost point that is told apart, °C. Drier air, down to air without any water, reads as this.</summary>
    public const double LowestC = SaturationPressure.LowestC;

    private const int IterationCap = 30;
    private const double ToleranceC = 1e-9;

    private static readonly double LowestOverWaterPa = SaturationPressure.OverWater(LowestC);
    private static readonly double LowestOverIcePa = SaturationPressure.OverIce(LowestC);
    private static readonly double HighestOverWaterPa = SaturationPressure.OverWater(SaturationPressure.HighestC);
    private static readonly double TriplePointPa = SaturationPressure.OverIce(TriplePointC);

    private static double TriplePointC => SaturationPressure.TriplePointK - SaturationPressure.ZeroCelsiusK;

    /// <summary>Dew point, °C: over water, and over supercooled water below 0 °C.</summary>
    /// <param name="vapourPressurePa">Partial pressure of water vapour, Pa, 0 to the saturation pressure at 200 °C.
    /// Below the saturation pressure at -100 °C (0.0036 Pa) the answer is -100 °C.</param>
    /// <remarks>Inverts <see cref="SaturationPressure.OverWater(double)"/> by Newton's method on ln p against 1/T, where the curve is nearly straight.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is not a number or out of range.</exception>
    public static double OverWater(double vapourPressurePa)
    {
        Require.InRange(vapourPressurePa, 0, HighestOverWaterPa, "Pa");
        return vapourPressurePa <= LowestOverWaterPa
            ? LowestC
            : Invert(vapourPressurePa, SaturationPressure.HighestC, SaturationPressure.OverWater, "dew point over water");
    }

    /// <summary>Frost point, °C: the temperature at which ice, not dew, forms on a surface.</summary>
    /// <param name="vapourPressurePa">Partial pressure of water vapour, Pa, from 0 to 611.657 Pa, the triple point; no
    /// frost forms from more. Below the saturation pressure over ice at -100 °C (0.0014 Pa) the answer is -100 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is not a number or out of range.</exception>
    public static double OverIce(double vapourPressurePa)
    {
        Require.InRange(vapourPressurePa, 0, TriplePointPa, "Pa");
        return vapourPressurePa <= LowestOverIcePa
            ? LowestC
            : Invert(vapourPressurePa, TriplePointC, SaturationPressure.OverIce, "frost point over ice");
    }

    private delegate double Curve(double temperatureC, out double slopePaPerK);

    private static double Invert(double pressurePa, double highestC, Curve saturation, string what)
    {
        double logarithm = Math.Log(pressurePa);
        double temperatureC = Math.Clamp(FirstGuessC(logarithm), LowestC, highestC);
        for (int i = 0; i < IterationCap; i++)
        {
            double atGuessPa = saturation(temperatureC, out double slopePaPerK);
            double kelvin = temperatureC + SaturationPressure.ZeroCelsiusK;
            // d(ln p)/d(1/T) = -T² p'/p
            double inverse = (1 / kelvin) - ((logarithm - Math.Log(atGuessPa)) * atGuessPa / (slopePaPerK * kelvin * kelvin));
            double nextC = Math.Clamp((1 / inverse) - SaturationPressure.ZeroCelsiusK, LowestC, highestC);
            if (Math.Abs(nextC - temperatureC) < ToleranceC)
            {
                return nextC;
            }

            temperatureC = nextC;
        }

        throw new ArithmeticException($"The solver for the {what} did not converge in {IterationCap} steps at {pressurePa} Pa.");
    }

    // Magnus form with the coefficients of WMO-No. 8 (2008), annex 4.B; only where Newton starts from.
    private static double FirstGuessC(double logarithmOfPa)
    {
        double x = (logarithmOfPa - Math.Log(611.2)) / 17.62;
        return x < 0.9 ? 243.12 * x / (1 - x) : SaturationPressure.HighestC;
    }
}
