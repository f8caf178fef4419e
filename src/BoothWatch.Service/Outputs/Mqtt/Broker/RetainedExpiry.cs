using System.Collections.Concurrent;
using MQTTnet;

namespace BoothWatch.Service.Outputs.Mqtt.Broker;

/// <summary>
/// Remembers when retained messages expire, since the broker library keeps them for ever.
/// Source: MQTT 5.0, 3.3.2.3.3 Message Expiry Interval.
/// </summary>
internal sealed class RetainedExpiry(TimeProvider time)
{
    private readonly ConcurrentDictionary<string, (long Noted, TimeSpan Lasts)> _kept = new(StringComparer.Ordinal);

    /// <summary>Notes a message that the broker takes.</summary>
    public void Note(MqttApplicationMessage message)
    {
        if (!message.Retain)
        {
            return;
        }

        if (message.Payload.Length == 0 || message.MessageExpiryInterval == 0)
        {
            _kept.TryRemove(message.Topic, out _);
        }
        else
        {
            _kept[message.Topic] = (time.GetTimestamp(), TimeSpan.FromSeconds(message.MessageExpiryInterval));
        }
    }

    /// <summary>The topics whose message has expired, and forgets them.</summary>
    public IReadOnlyList<string> TakeExpired()
    {
        List<string> expired = [];
        foreach (KeyValuePair<string, (long Noted, TimeSpan Lasts)> entry in _kept)
        {
            // Removed only as it was seen, so that one renewed meanwhile stays.
            if (time.GetElapsedTime(entry.Value.Noted) >= entry.Value.Lasts && _kept.TryRemove(entry))
            {
                expired.Add(entry.Key);
            }
        }

        return expired;
    }
}
