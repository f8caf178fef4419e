namespace BoothWatch.Air;

/// <summary>Relative humidity over water from other measures of moisture.</summary>
public static class RelativeHumidity
{
    /// <summary>Relative humidity over water, %, of air of a temperature and a dew point: 100 psat(dew point)/psat(temperature).</summary>
    /// <param name="temperatureC">Dry-bulb temperature, °C, -60 to 90.</param>
    /// <param name="dewPointC">Dew point over water, °C, -100 to the temperature.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a number or out of its range.</exception>
    public static double FromDewPoint(double temperatureC, double dewPointC)
    {
        Require.InRange(temperatureC, MoistAir.LowestTemperatureC, MoistAir.HighestTemperatureC, "°C");
        Require.InRange(dewPointC, DewPoint.LowestC, temperatureC, "°C");
        return 100 * (SaturationPressure.OverWater(dewPointC) / SaturationPressure.OverWater(temperatureC));
    }

    /// <summary>Relative humidity over water, %, of air of a temperature and a frost point.</summary>
    /// <param name="temperatureC">Dry-bulb temperature, °C, -60 to 90.</param>
    /// <param name="frostPointC">Frost point over ice, °C, -100 to 0.01; not above the temperature by so much that the
    /// air would be past saturation over water.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a number or out of its range.</exception>
    public static double FromFrostPoint(double temperatureC, double frostPointC)
    {
        Require.InRange(temperatureC, MoistAir.LowestTemperatureC, MoistAir.HighestTemperatureC, "°C");
        double saturationPa = SaturationPressure.OverWater(temperatureC);
        double highestC = saturationPa < SaturationPressure.OverIce(0.01) ? DewPoint.OverIce(saturationPa) : 0.01;
        Require.InRange(frostPointC, DewPoint.LowestC, highestC, "°C");
        return 100 * (SaturationPressure.OverIce(frostPointC) / saturationPa);
    }
}
