namespace BoothWatch.Service.Checks;

/// <summary>When sensors are due for a check, and when a reading in the jar or back in the booth counts as settled.</summary>
public sealed class ChecksOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "checks";

    /// <summary>A sensor is due so long after its last check, months. Default 6 (common practice, no source), 1 to 24. A drift that is found shortens it.</summary>
    public int IntervalMonths { get; set; } = 6;

    /// <summary>Least time in the closed jar before a result is taken, h. Default 2 (common practice, no source), 0.5 to 72.</summary>
    public double JarHours { get; set; } = 2;

    /// <summary>In the jar humidity and temperature must have been steady for so long, min. Default 30, 10 to 600.</summary>
    public double JarSteadyMinutes { get; set; } = 30;

    /// <summary>Most change of humidity in the jar over that time, % of relative humidity. Default 0.3, 0.1 to 2.</summary>
    public double JarHumidityChangePct { get; set; } = 0.3;

    /// <summary>Most change of temperature in the jar over that time, °C. Default 0.3, 0.1 to 1.</summary>
    public double JarTemperatureChangeC { get; set; } = 0.3;

    /// <summary>How much the salt and the sensor in the jar may differ in temperature, ± °C; goes into the uncertainty. Default 0.2, 0.05 to 2.</summary>
    public double GradientC { get; set; } = 0.2;

    /// <summary>Back in the booth it must have been steady for so long before it counts again, min. Default 10, 5 to 240. Three times as long after more than 80 % in the jar.</summary>
    public double BackSteadyMinutes { get; set; } = 10;

    /// <summary>Most change of humidity back in the booth over that time, % of relative humidity. Default 1.5, 0.3 to 5.</summary>
    public double BackHumidityChangePct { get; set; } = 1.5;
}
