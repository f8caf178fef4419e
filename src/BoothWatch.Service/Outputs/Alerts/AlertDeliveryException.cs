namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>A message was not taken.</summary>
/// <param name="message">Why, and what to do, for people; never a secret.</param>
/// <param name="innerException">The error below.</param>
public sealed class AlertDeliveryException(string message, Exception? innerException = null) : Exception(message, innerException)
{
    /// <summary>True when another attempt cannot succeed, so that the message is set aside.</summary>
    public bool IsFinal { get; init; }

    /// <summary>True when it may have arrived all the same, as after a lost answer.</summary>
    public bool MayHaveArrived { get; init; }

    /// <summary>When the receiver wants to be asked again; null when it did not say.</summary>
    public TimeSpan? RetryAfter { get; init; }
}
