namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>The scripted shop that emulated sensors measure.</summary>
public sealed class DemoOptions
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "demo";

    /// <summary>Real time that one shop day, 08:00 to 17:00, takes, s. Default 240; 10 to 86400 (32400 is real speed).</summary>
    public double DayLengthS { get; set; } = 240;

    /// <summary>Shop time of the first reading, hh:mm. Default 08:00; 08:00 to 16:59.</summary>
    public string StartAt { get; set; } = "08:00";

    /// <summary>Retarder in the cup of the scripted shop, % by volume of the unretarded mix; holds while every sensor is emulated and
    /// <c>coat:loadedRetarderPct</c> is not given. Default 5; 0 to 30.</summary>
    public double CupRetarderPct { get; set; } = 5;

    /// <summary>Seed of the sensor noise: the same seed gives the same noise. Default 1.</summary>
    public int Seed { get; set; } = 1;

    /// <summary>A fault of one emulated sensor during part of each shop day. Default: none.</summary>
    public DemoFaultOptions Fault { get; set; } = new();
}
