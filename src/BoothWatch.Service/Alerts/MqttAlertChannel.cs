using System.Text.Json;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Mqtt;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Alerts;

/// <summary>
/// Publishes alerts over the connection of the MQTT output; here, because outputs may not know each other. Not retained: an alert is
/// news, and the broker drops it from its queues when it is none any more.
/// </summary>
/// <remarks>The connection is looked up when it is needed: it hands commands on to the alerts, so each would wait for the other to be made.</remarks>
internal sealed class MqttAlertChannel(IServiceProvider services, IOptions<AlertsOptions> options, IOptions<MqttOptions> mqtt, TimeProvider time) : IAlertChannel
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1.5);

    public string Name => "mqtt";

    public string? OffBecause =>
        !options.Value.Mqtt.Enabled ? "it is switched off: alerts:mqtt:enabled"
        : mqtt.Value.Use == MqttOptions.Off ? "MQTT is switched off: mqtt:use"
        : null;

    public IReadOnlyList<string> Targets() => [""];

    public async Task SendAsync(string target, AlertMessage message, CancellationToken cancellationToken)
    {
        try
        {
            MqttSession session = await services.GetRequiredService<MqttLink>().SessionAsync(Patience, cancellationToken);
            byte[] payload = JsonSerializer.SerializeToUtf8Bytes(message, AlertJson.Options);
            int expiryS = (int)Math.Ceiling(message.LeftAt(time.GetUtcNow()).TotalSeconds);
            string topic = services.GetRequiredService<MqttTopics>().Alert;
            await session.PublishAsync(topic, payload, ContentTypes.Json, retain: false, Math.Max(1, expiryS), cancellationToken);
        }
        catch (MqttLinkException e)
        {
            throw new AlertDeliveryException(e.Message, e) { MayHaveArrived = e.InnerException is not null };
        }
    }
}
