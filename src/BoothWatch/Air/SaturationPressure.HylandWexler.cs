namespace BoothWatch.Air;

public static partial class SaturationPressure
{
    /// <summary>Saturation pressure over liquid water after Hyland and Wexler, as the ASHRAE handbook gives it, Pa.</summary>
    /// <param name="temperatureK">Temperature, K, 273.15 to 473.15; not checked.</param>
    /// <remarks>
    /// ln p = c8/T + c9 + c10 T + c11 T² + c12 T³ + c13 ln T.
    /// Source: R. W. Hyland and A. Wexler, ASHRAE Transactions 89 (1983) 500-519; ASHRAE Handbook Fundamentals (2017)
    /// chapter 1, equation (6). Not used by BoothWatch itself: it is the bridge to what handbooks and other programs
    /// calculate, and lies within 0.005 K of <see cref="WagnerPruss(double)"/> from 0 to 90 °C.
    /// Worked example: 293.15 K gives 2338.8 Pa.
    /// </remarks>
    public static double HylandWexlerWater(double temperatureK) =>
        Math.Exp((-5.8002206e3 / temperatureK) + 1.3914993 - (4.8640239e-2 * temperatureK)
            + (4.1764768e-5 * temperatureK * temperatureK) - (1.4452093e-8 * temperatureK * temperatureK * temperatureK)
            + (6.5459673 * Math.Log(temperatureK)));

    /// <summary>Saturation pressure over ice after Hyland and Wexler, as the ASHRAE handbook gives it, Pa.</summary>
    /// <param name="temperatureK">Temperature, K, 173.15 to 273.15; not checked.</param>
    /// <remarks>
    /// ln p = c1/T + c2 + c3 T + c4 T² + c5 T³ + c6 T⁴ + c7 ln T. Source as <see cref="HylandWexlerWater"/>, equation (5).
    /// Worked example: 253.15 K gives 103.2 Pa.
    /// </remarks>
    public static double HylandWexlerIce(double temperatureK)
    {
        double square = temperatureK * temperatureK;
        return Math.Exp((-5.6745359e3 / temperatureK) + 6.3925247 - (9.677843e-3 * temperatureK) + (6.2215701e-7 * square)
            + (2.0747825e-9 * square * temperatureK) - (9.484024e-13 * square * square)
            + (4.1635019 * Math.Log(temperatureK)));
    }
}
