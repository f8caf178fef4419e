namespace BoothWatch.Air;

/// <summary>Saturation pressure of water vapour over plane, pure water and ice.</summary>
/// <remarks>
/// <see cref="OverWater(double)"/> and <see cref="OverIce(double)"/> are what BoothWatch calculates with. The
/// formulations they are made of, and the one of the ASHRAE handbook beside them, stand in files of their own
/// and are named by author. None of them knows the enhancement factor of real air (about 1.004): see
/// docs/method.md for what that leaves out.
/// </remarks>
public static partial class SaturationPressure
{
    /// <summary>0 °C in kelvin (definition of the Celsius scale).</summary>
    public const double ZeroCelsiusK = 273.15;

    /// <summary>Triple point of water, K (International Temperature Scale of 1990).</summary>
    public const double TriplePointK = 273.16;

    /// <summary>Lowest temperature of <see cref="OverWater(double)"/> and <see cref="OverIce(double)"/>, °C.</summary>
    public const double LowestC = -100;

    /// <summary>Highest temperature of <see cref="OverWater(double)"/>, °C.</summary>
    public const double HighestC = 200;

    private const double TriplePointC = TriplePointK - ZeroCelsiusK;

    // Brings Murphy and Koop onto Wagner and Pruss at the triple point: 1.00000004, far below the uncertainty of either.
    private static readonly double SupercooledScale = WagnerPruss(TriplePointK) / MurphyKoop(TriplePointK);

    /// <summary>Saturation pressure over water, Pa; over supercooled water below 0.01 °C.</summary>
    /// <param name="temperatureC">Temperature, °C, from <see cref="LowestC"/> to <see cref="HighestC"/>. Not checked,
    /// because the drying film asks millions of times; outside it the value is an extrapolation, NaN stays NaN.</param>
    /// <remarks>
    /// <see cref="WagnerPruss(double)"/> from the triple point up, <see cref="MurphyKoop(double)"/> below it, scaled by
    /// 1.00000004 so that the two meet. Worked example: 20 °C gives 2339.2 Pa.
    /// </remarks>
    public static double OverWater(double temperatureC)
    {
        double kelvin = temperatureC + ZeroCelsiusK;
        return temperatureC >= TriplePointC ? WagnerPruss(kelvin) : SupercooledScale * MurphyKoop(kelvin);
    }

    /// <summary>Saturation pressure over water, Pa, and its slope.</summary>
    /// <param name="temperatureC">As in <see cref="OverWater(double)"/>.</param>
    /// <param name="slopePaPerK">The derivative with respect to temperature, Pa/K (analytic).</param>
    public static double OverWater(double temperatureC, out double slopePaPerK)
    {
        double kelvin = temperatureC + ZeroCelsiusK;
        if (temperatureC >= TriplePointC)
        {
            return WagnerPruss(kelvin, out slopePaPerK);
        }

        double pressurePa = SupercooledScale * MurphyKoop(kelvin, out slopePaPerK);
        slopePaPerK *= SupercooledScale;
        return pressurePa;
    }

    /// <summary>Saturation pressure over ice, Pa.</summary>
    /// <param name="temperatureC">Temperature, °C, from <see cref="LowestC"/> to 0.01 °C; not checked.</param>
    public static double OverIce(double temperatureC) => IapwsIce(temperatureC + ZeroCelsiusK);

    /// <summary>Saturation pressure over ice, Pa, and its slope.</summary>
    /// <param name="temperatureC">As in <see cref="OverIce(double)"/>.</param>
    /// <param name="slopePaPerK">The derivative with respect to temperature, Pa/K (analytic).</param>
    public static double OverIce(double temperatureC, out double slopePaPerK) =>
        IapwsIce(temperatureC + ZeroCelsiusK, out slopePaPerK);
}
