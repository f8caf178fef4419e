namespace BoothWatch.Air;

public sealed partial record MoistAir
{
    private const double LargestPressureDifferencePa = 1000;
    private const int FogIterationCap = 100;
    private const double FogToleranceC = 1e-9;

    /// <summary>Mixes two air streams at constant pressure without heat from outside.</summary>
    /// <param name="first">The first stream.</param>
    /// <param name="firstDryAirKg">Its dry air, kg (or kg/s), 0 or more.</param>
    /// <param name="second">The second stream; its pressure within 1000 Pa of the first, because one barometer serves both.</param>
    /// <param name="secondDryAirKg">Its dry air, in the unit of the first, 0 or more; not both zero.</param>
    /// <remarks>
    /// Humidity ratio and enthalpy mix in proportion to dry air: ASHRAE Handbook Fundamentals (2017), chapter 1, section
    /// "Adiabatic mixing of two moist airstreams". Where the mixture holds more water than saturated air of its enthalpy
    /// can, the rest is fog: h = hs(t) + (W - Ws(t)) hw(t) is solved for t.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A mass is negative or not finite, both are zero, or the pressures differ.</exception>
    public static AirMixture Mix(MoistAir first, double firstDryAirKg, MoistAir second, double secondDryAirKg)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Require.InRange(firstDryAirKg, 0, double.MaxValue, "kg");
        Require.InRange(secondDryAirKg, firstDryAirKg > 0 ? 0 : double.Epsilon, double.MaxValue, "kg");
        double differencePa = second.PressurePa - first.PressurePa;
        Require.InRange(differencePa, -LargestPressureDifferencePa, LargestPressureDifferencePa, "Pa");

        double share = 1 / (1 + (firstDryAirKg / secondDryAirKg));
        double pressurePa = Between(first.PressurePa, second.PressurePa, share);
        double ratio = Between(first.HumidityRatio, second.HumidityRatio, share);
        double enthalpy = Between(first.EnthalpyJPerKgDryAir, second.EnthalpyJPerKgDryAir, share);
        double temperatureC = (enthalpy - (2_501_000 * ratio)) / (1006 + (1860 * ratio));
        double saturationPa = SaturationPressure.OverWater(temperatureC);
        double vapourPa = pressurePa * ratio / (MolarMassRatio + ratio);
        if (vapourPa <= saturationPa * (1 + 1e-12))
        {
            return new AirMixture(FromRelativeHumidity(temperatureC, Math.Min(100, 100 * vapourPa / saturationPa), pressurePa), 0);
        }

        MoistAir saturated = FromRelativeHumidity(FogTemperatureC(ratio, enthalpy, pressurePa, temperatureC), 100, pressurePa);
        return new AirMixture(saturated, ratio - saturated.HumidityRatio);
    }

    private static double Between(double first, double second, double share) => first + ((second - first) * share);

    // Fog gives its heat of condensation back, so the mixture is warmer than without it and colder than its dew point.
    private static double FogTemperatureC(double ratio, double enthalpy, double pressurePa, double withoutFogC)
    {
        double lowC = withoutFogC;
        double highC = DewPoint.OverWater(pressurePa * ratio / (MolarMassRatio + ratio));
        for (int i = 0; i < FogIterationCap; i++)
        {
            double middleC = lowC + ((highC - lowC) / 2);
            double saturatedRatio = RatioOf(SaturationPressure.OverWater(middleC), pressurePa);
            double excess = EnthalpyOf(middleC, saturatedRatio) + ((ratio - saturatedRatio) * LiquidEnthalpyOf(middleC)) - enthalpy;
            if (highC - lowC < FogToleranceC)
            {
                return middleC;
            }

            if (excess > 0)
            {
                highC = middleC;
            }
            else
            {
                lowC = middleC;
            }
        }

        throw new ArithmeticException($"The fog solver did not converge in {FogIterationCap} steps at humidity ratio {ratio} and {pressurePa} Pa.");
    }
}
