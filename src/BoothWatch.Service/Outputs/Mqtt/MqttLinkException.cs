namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>A message could not be published; the message says why, in words with the fix where there is one.</summary>
public sealed class MqttLinkException(string message, Exception? cause = null) : OutputUnavailableException(message, cause);
