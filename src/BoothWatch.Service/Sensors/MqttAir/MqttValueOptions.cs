namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>Where one value is in the messages of another sensor.</summary>
public sealed class MqttValueOptions
{
    /// <summary>Its topic, without wildcards. No default.</summary>
    public string Topic { get; set; } = "";

    /// <summary>JSON pointer (RFC 6901) to the value in a JSON payload, for example <c>/air/temp</c>. Default empty: the payload is the number.</summary>
    public string ValuePointer { get; set; } = "";

    /// <summary>JSON pointer to the time of the measurement: text after RFC 3339, or a number of seconds since 1970. Default empty: none is sent.</summary>
    public string TimePointer { get; set; } = "";
}
