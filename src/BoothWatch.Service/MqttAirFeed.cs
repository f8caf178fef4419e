using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.MqttAir;

namespace BoothWatch.Service;

/// <summary>
/// Hands messages from the connection of the MQTT output to the sensors that listen; here, because the two may not know each
/// other. Asks for the sensors so that they listen before the connection is made.
/// </summary>
internal sealed class MqttAirFeed(SensorSet sensors, AirMessages messages) : IMqttSubscriber
{
    // Nothing is queued for us while we are away: a reading from then would look new.
    public IReadOnlyList<MqttWish> Wishes { get; } = sensors.Any()
        ? [.. messages.Topics.Select(topic => new MqttWish(topic, QueueWhileAway: false, MarkSentRetained: false))]
        : [];

    public void Take(MqttArrival arrival) => messages.Take(arrival.Topic, arrival.Payload, arrival.IsRetained);
}
