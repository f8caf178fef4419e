namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>A fault of one emulated sensor during part of each shop day.</summary>
public sealed class DemoFaultOptions
{
    /// <summary>Configured name of the sensor, for example <c>boothAir</c>; empty for no fault. Default empty.</summary>
    public string Sensor { get; set; } = "";

    /// <summary>What fails: none, noAcknowledge, badCrc, allZero, allOnes, stuck, drift, saturated. Default none. A contact opens, whatever fails.</summary>
    public string Kind { get; set; } = "none";

    /// <summary>Shop time at which it begins, hh:mm. Default 09:30.</summary>
    public string From { get; set; } = "09:30";

    /// <summary>Shop time at which it ends, hh:mm. Default 10:30.</summary>
    public string Until { get; set; } = "10:30";
}
