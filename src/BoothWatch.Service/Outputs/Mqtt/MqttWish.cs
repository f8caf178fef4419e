namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>A topic filter that somebody wants.</summary>
/// <param name="Filter">The filter; <c>+</c> and <c>#</c> as MQTT has them.</param>
/// <param name="QueueWhileAway">
/// False (QoS 0) to get only what is sent while the connection stands; true (QoS 1) to have the broker queue messages meanwhile.
/// </param>
/// <param name="MarkSentRetained">
/// True to have <see cref="MqttArrival.IsRetained"/> set for every message that its sender wanted retained; false to have it set
/// only for those that the broker had kept from before.
/// </param>
public sealed record MqttWish(string Filter, bool QueueWhileAway, bool MarkSentRetained);
