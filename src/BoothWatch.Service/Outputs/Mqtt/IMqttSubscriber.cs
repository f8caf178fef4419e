namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Something that wants messages of others over the one connection to the broker.</summary>
public interface IMqttSubscriber
{
    /// <summary>The topic filters it wants.</summary>
    IReadOnlyList<MqttWish> Wishes { get; }

    /// <summary>Takes a message that matches one of its filters. Returns at once and does not throw.</summary>
    void Take(MqttArrival arrival);
}
