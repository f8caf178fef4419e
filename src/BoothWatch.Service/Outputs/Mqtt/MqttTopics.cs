using BoothWatch.Service.Coat;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>The topics of this booth.</summary>
public sealed class MqttTopics
{
    /// <summary>The topics that the options give.</summary>
    public MqttTopics(MqttOptions options, BoothOptions booth)
    {
        (string shopLevel, string boothLevel) = (TopicLevel.Of(booth.Shop), TopicLevel.Of(booth.Name));
        DeviceId = options.DeviceId.Length > 0 ? options.DeviceId : $"{shopLevel}-{boothLevel}";
        Device = $"{options.HomieRoot}/5/{DeviceId}";
        Booth = $"{options.Root}/{shopLevel}/{boothLevel}";
    }

    /// <summary>Homie device id.</summary>
    public string DeviceId { get; }

    /// <summary>Base of the Homie topics.</summary>
    public string Device { get; }

    /// <summary>Base of the other topics.</summary>
    public string Booth { get; }

    /// <summary>Homie life cycle of the device.</summary>
    public string State => $"{Device}/$state";

    /// <summary>Homie description of the device.</summary>
    public string Description => $"{Device}/$description";

    /// <summary>The whole assessment as one JSON document.</summary>
    public string Assessment => $"{Booth}/assessment";

    /// <summary>Each verdict change, once at least.</summary>
    public string VerdictChange => $"{Booth}/verdict-change";

    /// <summary>The last verdict changes, for a reader that was away.</summary>
    public string RecentVerdictChanges => $"{Booth}/recent-verdict-changes";

    /// <summary>Alerts and their all-clears.</summary>
    public string Alert => $"{Booth}/alert";

    /// <summary>Where commands come in; the name of the command follows.</summary>
    public string Command => $"{Booth}/command";

    /// <summary>Answers to commands.</summary>
    public string CommandAnswer => $"{Booth}/command-answer";

    /// <summary>A property of a node.</summary>
    public string Property(string node, string property) => $"{Device}/{node}/{property}";
}
