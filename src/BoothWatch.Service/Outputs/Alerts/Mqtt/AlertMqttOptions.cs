namespace BoothWatch.Service.Outputs.Alerts.Mqtt;

/// <summary>Alerts by MQTT, <c>alerts:mqtt</c>.</summary>
public sealed class AlertMqttOptions
{
    /// <summary>True: alerts are published to the broker of <c>mqtt</c>. Default true.</summary>
    public bool Enabled { get; set; } = true;
}
