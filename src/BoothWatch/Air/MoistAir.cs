namespace BoothWatch.Air;

/// <summary>The state of moist air: what a hygrometer and a barometer say, and what follows from it.</summary>
public sealed record MoistAir
{
    private MoistAir(double temperatureC, double relativeHumidityPct, double pressurePa)
    {
        TemperatureC = temperatureC;
        RelativeHumidityPct = relativeHumidityPct;
        PressurePa = pressurePa;
    }

    /// <summary>Dry-bulb temperature, °C.</summary>
    public double TemperatureC { get; }

    /// <summary>Relative humidity over water, %.</summary>
    public double RelativeHumidityPct { get; }

    /// <summary>Station pressure, Pa.</summary>
    public double PressurePa { get; }

    /// <summary>Partial pressure of water vapour, Pa.</summary>
    public double VapourPressurePa => throw new NotImplementedException();

    /// <summary>Dew point over water, °C.</summary>
    public double DewPointC => throw new NotImplementedException();

    /// <summary>Air of a temperature and a relative humidity over water.</summary>
    public static MoistAir FromRelativeHumidity(double temperatureC, double relativeHumidityPct, double pressurePa) =>
        new(temperatureC, relativeHumidityPct, pressurePa);
}
