namespace BoothWatch.Air;

public sealed partial record MoistAir
{
    private const int WetBulbIterationCap = 60;
    private const double WetBulbToleranceC = 1e-8;

    /// <summary>Thermodynamic wet bulb (adiabatic saturation) over water, °C; over supercooled water below 0 °C, a wick that has not frozen.</summary>
    /// <remarks>
    /// Solves h + (Ws(t*) - W) hw(t*) = hs(t*) for t*, with hw the enthalpy of the liquid water that evaporates:
    /// ASHRAE Handbook Fundamentals (2017), chapter 1, equation (31). Newton's method, kept inside a bracket that shrinks
    /// at every step and falls back to bisection.
    /// </remarks>
    /// <exception cref="ArithmeticException">The solver did not converge; it names the air.</exception>
    public double WetBulbC
    {
        get
        {
            double ratio = HumidityRatio;
            double enthalpy = EnthalpyJPerKgDryAir;
            double lowC = DewPointC;
            double highC = TemperatureC;
            double guessC = highC - ((highC - lowC) / 3);
            for (int i = 0; i < WetBulbIterationCap; i++)
            {
                double excess = WetBulbExcess(guessC, ratio, enthalpy, out double slope);
                if (excess > 0)
                {
                    highC = guessC;
                }
                else
                {
                    lowC = guessC;
                }

                double nextC = guessC - (excess / slope);
                if (!(nextC >= lowC && nextC <= highC))
                {
                    nextC = lowC + ((highC - lowC) / 2);
                }

                if (Math.Abs(nextC - guessC) < WetBulbToleranceC)
                {
                    return nextC;
                }

                guessC = nextC;
            }

            throw new ArithmeticException($"The wet-bulb solver did not converge in {WetBulbIterationCap} steps for {this}.");
        }
    }

    // hs(t*) - h - (Ws(t*) - W) hw(t*), which rises with t*; at and above boiling it is infinite.
    private double WetBulbExcess(double guessC, double ratio, double enthalpy, out double slope)
    {
        double saturationPa = SaturationPressure.OverWater(guessC, out double saturationSlope);
        double gapPa = PressurePa - saturationPa;
        if (gapPa <= 0)
        {
            slope = 1;
            return double.PositiveInfinity;
        }

        double saturatedRatio = MolarMassRatio * saturationPa / gapPa;
        double saturatedRatioSlope = MolarMassRatio * PressurePa / (gapPa * gapPa) * saturationSlope;
        slope = 1006 + (saturatedRatioSlope * (2_501_000 + ((1860 - 4186) * guessC))) + (saturatedRatio * (1860 - 4186)) + (ratio * 4186);
        return EnthalpyOf(guessC, saturatedRatio) - enthalpy - ((saturatedRatio - ratio) * LiquidEnthalpyOf(guessC));
    }
}
