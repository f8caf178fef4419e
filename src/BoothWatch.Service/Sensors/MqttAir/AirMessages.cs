using System.Collections.Concurrent;

namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>Where messages of other sensors come in, whoever fetches them. Safe to use from several threads.</summary>
/// <param name="time">Clock that ages them.</param>
public sealed class AirMessages(TimeProvider time)
{
    private readonly ConcurrentDictionary<string, ConcurrentBag<AirMessageTaker>> _takers = new(StringComparer.Ordinal);

    /// <summary>Clock that ages messages.</summary>
    public TimeProvider Time => time;

    /// <summary>The topics that somebody listens to.</summary>
    public IReadOnlyCollection<string> Topics => [.. _takers.Keys];

    /// <summary>Listens to a topic.</summary>
    public void Listen(string topic, AirMessageTaker taker) => _takers.GetOrAdd(topic, _ => []).Add(taker);

    /// <summary>Hands a message to those who listen to its topic.</summary>
    /// <param name="topic">Its topic.</param>
    /// <param name="payload">Its bytes.</param>
    /// <param name="isRetained">True when the broker had kept it from before, so that it may be of any age.</param>
    public void Take(string topic, ReadOnlyMemory<byte> payload, bool isRetained)
    {
        if (_takers.TryGetValue(topic, out ConcurrentBag<AirMessageTaker>? takers))
        {
            foreach (AirMessageTaker taker in takers)
            {
                taker(payload, isRetained);
            }
        }
    }
}
