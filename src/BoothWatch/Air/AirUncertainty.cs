namespace BoothWatch.Air;

/// <summary>Standard uncertainties (k = 1) of the measured air.</summary>
/// <param name="TemperatureC">Of the air temperature, °C.</param>
/// <param name="RelativeHumidityPct">Of the relative humidity, percentage points.</param>
/// <remarks>
/// The station pressure is left out: the dew point at a given relative humidity does not depend on it, and 5 kPa move the blush margin
/// by less than 0.1 °C (docs/method.md).
/// </remarks>
public sealed record AirUncertainty(double TemperatureC, double RelativeHumidityPct)
{
    /// <summary>Standard uncertainty of the dew point of <paramref name="air"/>, °C, to first order.</summary>
    /// <remarks>
    /// u² = (∂td/∂t u_t)² + (∂td/∂RH u_RH)², temperature and humidity taken as independent: JCGM 100:2008, equation (10).
    /// The derivatives are those of <see cref="DewPointSensitivity"/>. Pressure has no part in it.
    /// Worked example: 20 °C, 50 %, 0.1 °C and 1 percentage point give 0.31 °C.
    /// </remarks>
    public double OfDewPointC(MoistAir air)
    {
        DewPointSensitivity sensitivity = DewPointSensitivity.Of(air);
        double fromTemperature = sensitivity.PerTemperature * TemperatureC;
        double fromHumidity = sensitivity.CPerHumidityPct * RelativeHumidityPct;
        return Math.Sqrt((fromTemperature * fromTemperature) + (fromHumidity * fromHumidity));
    }
}
