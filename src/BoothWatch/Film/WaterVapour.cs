using BoothWatch.Solvents;

namespace BoothWatch.Film;

/// <summary>Saturation of water as the solver needs it: logarithm and slope at once.</summary>
/// <remarks>
/// Hyland and Wexler over liquid water as in ASHRAE Fundamentals 2017, chapter 1, equation 6: ln p = C8/T + C9 + C10 T + C11 T² + C12 T³ + C13 ln T.
/// Below 0 °C it gives supercooled water, which is what first condenses on a film.
/// </remarks>
internal static class WaterVapour
{
    private const double C8 = -5.8002206e3;
    private const double C9 = 1.3914993;
    private const double C10 = -4.8640239e-2;
    private const double C11 = 4.1764768e-5;
    private const double C12 = -1.4452093e-8;
    private const double C13 = 6.5459673;

    /// <summary>Natural logarithm of the saturation pressure over water in Pa, and its slope, 1/K.</summary>
    public static (double LnPa, double SlopePerK) LnSaturation(double temperatureK, double lnTemperatureK) => (
        (C8 / temperatureK) + C9 + (temperatureK * (C10 + (temperatureK * (C11 + (temperatureK * C12))))) + (C13 * lnTemperatureK),
        (-C8 / (temperatureK * temperatureK)) + C10 + (temperatureK * ((2 * C11) + (3 * C12 * temperatureK))) + (C13 / temperatureK));

    /// <summary>Saturation pressure over water, Pa.</summary>
    public static double SaturationPa(double temperatureC)
    {
        double temperatureK = temperatureC + PhysicalConstants.ZeroCelsiusK;
        return Math.Exp(LnSaturation(temperatureK, Math.Log(temperatureK)).LnPa);
    }

    /// <summary>Dew point over water of a vapour pressure, °C, by Newton's method on the logarithm.</summary>
    /// <param name="vapourPressurePa">Vapour pressure, Pa, positive.</param>
    public static double DewPointC(double vapourPressurePa)
    {
        double target = Math.Log(vapourPressurePa);
        double temperatureK = 285;
        for (int i = 0; i < 50; i++)
        {
            (double ln, double slope) = LnSaturation(temperatureK, Math.Log(temperatureK));
            double step = (target - ln) / slope;
            temperatureK = Math.Clamp(temperatureK + step, 150, 500);
            if (Math.Abs(step) < 1e-9)
            {
                return temperatureK - PhysicalConstants.ZeroCelsiusK;
            }
        }

        throw new DryingFailedException($"dew point: Newton's method found no temperature for a vapour pressure of {vapourPressurePa} Pa");
    }

    /// <summary>Slope of the dew point with the logarithm of the vapour pressure, K.</summary>
    public static double DewPointSlopeK(double dewPointC)
    {
        double temperatureK = dewPointC + PhysicalConstants.ZeroCelsiusK;
        return 1 / LnSaturation(temperatureK, Math.Log(temperatureK)).SlopePerK;
    }
}
