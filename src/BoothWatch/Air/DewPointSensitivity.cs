namespace BoothWatch.Air;

/// <summary>How the dew point moves with the measured temperature and humidity.</summary>
/// <param name="PerTemperature">∂td/∂t at constant relative humidity, °C/°C: (RH/100) psat'(t)/psat'(td).</param>
/// <param name="CPerHumidityPct">∂td/∂RH at constant temperature, °C a percentage point: (psat(t)/100)/psat'(td).</param>
public readonly record struct DewPointSensitivity(double PerTemperature, double CPerHumidityPct)
{
    /// <summary>Lowest relative humidity at which the sensitivities are taken, %.</summary>
    public const double LowestHumidityPct = 1;

    /// <summary>
    /// The sensitivities of <paramref name="air"/>. Drier than 1 % they are those of air of 1 %: towards dry air the slope
    /// grows without bound and says nothing, for a step of any sensor's tolerance leaves the straight line.
    /// </summary>
    public static DewPointSensitivity Of(MoistAir air)
    {
        ArgumentNullException.ThrowIfNull(air);
        double share = Math.Max(air.RelativeHumidityPct, LowestHumidityPct) / 100;
        double saturationPa = SaturationPressure.OverWater(air.TemperatureC, out double slopeAtTemperature);
        _ = SaturationPressure.OverWater(DewPoint.OverWater(share * saturationPa), out double slopeAtDewPoint);
        return new DewPointSensitivity(share * slopeAtTemperature / slopeAtDewPoint, saturationPa / 100 / slopeAtDewPoint);
    }
}
