using System.Collections.Concurrent;
using System.Text;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Packets;
using MQTTnet.Protocol;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>A client that knows nothing of the service: reads topics and writes what a test wants.</summary>
internal sealed class MqttReader : IAsyncDisposable
{
    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();

    private MqttReader() => _client.ApplicationMessageReceivedAsync += args =>
    {
        Heard message = new(
            args.ApplicationMessage.Topic,
            Encoding.UTF8.GetString(args.ApplicationMessage.Payload),
            args.ApplicationMessage.Retain,
            args.ApplicationMessage.MessageExpiryInterval,
            args.ApplicationMessage.ContentType,
            args.ApplicationMessage.QualityOfServiceLevel);
        All.Enqueue(message);
        return Task.CompletedTask;
    };

    public ConcurrentQueue<Heard> All { get; } = [];

    public bool IsConnected => _client.IsConnected;

    public static async Task<MqttReader> ConnectAsync(int port, string filter = "#", string? user = null, string? password = null)
    {
        MqttReader reader = new();
        Assert.Equal(MqttClientConnectResultCode.Success, await reader.TryConnectAsync(port, user, password));
        await reader.SubscribeAsync(filter);
        return reader;
    }

    public static async Task<MqttClientConnectResultCode> KnockAsync(int port, string? user = null, string? password = null, string? clientId = null)
    {
        await using MqttReader reader = new();
        return await reader.TryConnectAsync(port, user, password, clientId);
    }

    /// <summary>What a new client would find kept at the broker.</summary>
    public static async Task<IReadOnlyDictionary<string, Heard>> KeptAsync(int port, string? user = null, string? password = null)
    {
        // The broker answers the subscription, then sends what it kept, then our own message: when that is here, so is the rest.
        await using MqttReader reader = await ConnectAsync(port, "#", user, password);
        string mark = $"test/mark/{Guid.NewGuid():N}";
        await reader.WriteAsync(mark, "end");
        await Eventually.TrueAsync(() => reader.All.Any(message => message.Topic == mark), "the mark comes back");
        return reader.All.Where(message => message.IsRetained).GroupBy(message => message.Topic).ToDictionary(g => g.Key, g => g.Last());
    }

    public string? Last(string topic) => All.LastOrDefault(message => message.Topic == topic)?.Payload;

    public Task SubscribeAsync(string filter) => _client.SubscribeAsync(new MqttClientSubscribeOptions
    {
        TopicFilters = [new MqttTopicFilter { Topic = filter, QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce, RetainAsPublished = true }],
    });

    public Task<MqttClientPublishResult> WriteAsync(string topic, string payload, bool retain = false, uint expiryS = 0) => _client.PublishAsync(new MqttApplicationMessage
    {
        Topic = topic,
        Payload = new System.Buffers.ReadOnlySequence<byte>(Encoding.UTF8.GetBytes(payload)),
        Retain = retain,
        MessageExpiryInterval = expiryS,
        QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
    });

    public ValueTask DisposeAsync()
    {
        _client.Dispose();
        return ValueTask.CompletedTask;
    }

    private async Task<MqttClientConnectResultCode> TryConnectAsync(int port, string? user, string? password, string? clientId = null)
    {
        MqttClientOptionsBuilder options = new MqttClientOptionsBuilder()
            .WithProtocolVersion(MqttProtocolVersion.V500)
            .WithClientId(clientId ?? $"reader-{Guid.NewGuid():N}")
            .WithTcpServer("127.0.0.1", port);
        if (user is not null)
        {
            options.WithCredentials(user, password ?? "");
        }

        return (await _client.ConnectAsync(options.Build())).ResultCode;
    }

    internal sealed record Heard(
        string Topic, string Payload, bool IsRetained, uint ExpiryS, string? ContentType, MqttQualityOfServiceLevel Quality);
}
