namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>Air temperature and humidity that another sensor sends by MQTT.</summary>
public sealed class MqttAirOptions
{
    /// <summary>Where the temperature is.</summary>
    public MqttValueOptions Temperature { get; set; } = new();

    /// <summary>Where the relative humidity is, %.</summary>
    public MqttValueOptions Humidity { get; set; } = new();

    /// <summary>Unit of the temperature as sent: C, F or K. Default C.</summary>
    public string TemperatureUnit { get; set; } = "C";

    /// <summary>How long a message counts, s. Default 600; 5 to 86400.</summary>
    public double MaxAgeS { get; set; } = 600;

    /// <summary>How long a value may stand still, while messages keep coming, before it counts as frozen, s. Default 10800; 600 to 86400.</summary>
    public double FrozenAfterS { get; set; } = 10_800;

    /// <summary>Tolerance of that sensor's temperature, ±°C. Default 0.5; 0.01 to 5.</summary>
    public double TemperatureToleranceC { get; set; } = 0.5;

    /// <summary>Tolerance of that sensor's humidity, ±%. Default 3; 0.1 to 20.</summary>
    public double HumidityTolerancePct { get; set; } = 3;
}
