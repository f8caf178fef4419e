namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>Takes a message. Returns at once and does not throw.</summary>
/// <param name="payload">Its bytes.</param>
/// <param name="isRetained">True when the broker had kept it from before.</param>
public delegate void AirMessageTaker(ReadOnlyMemory<byte> payload, bool isRetained);
