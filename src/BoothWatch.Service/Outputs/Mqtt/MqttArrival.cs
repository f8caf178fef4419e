namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>A message as it came in.</summary>
/// <param name="Topic">Its topic.</param>
/// <param name="Payload">Its bytes.</param>
/// <param name="IsRetained">True when the broker had kept it, so that it may be of any age.</param>
public sealed record MqttArrival(string Topic, ReadOnlyMemory<byte> Payload, bool IsRetained);
