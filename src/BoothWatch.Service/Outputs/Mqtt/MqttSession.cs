using System.Buffers;
using System.Text;
using MQTTnet;
using MQTTnet.Protocol;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>One connection to the broker, from its start to its end. It never comes back: after its end there is another.</summary>
internal sealed class MqttSession
{
    private readonly IMqttClient _client;
    private readonly TimeSpan _answerWithin;
    private readonly TimeProvider _time;
    private readonly TaskCompletionSource<string> _end = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public MqttSession(IMqttClient client, TimeSpan answerWithin, TimeProvider time)
    {
        (_client, _answerWithin, _time) = (client, answerWithin, time);

        // Only a note: connecting again from this event can lock up the client.
        client.DisconnectedAsync += args =>
        {
            End(MqttTrouble.Explain(args));
            return Task.CompletedTask;
        };
    }

    /// <summary>Completes with the cause when the connection has ended.</summary>
    public Task<string> Ended => _end.Task;

    /// <summary>Publishes with QoS 1 and waits for the broker's answer.</summary>
    /// <param name="topic">Topic.</param>
    /// <param name="payload">Payload; empty clears a retained topic.</param>
    /// <param name="contentType">MIME type of the payload.</param>
    /// <param name="retain">Whether the broker keeps it.</param>
    /// <param name="expiryS">How long the broker keeps or queues it, s; 0 for ever.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <exception cref="MqttLinkException">The broker did not take it.</exception>
    public async Task PublishAsync(
        string topic, ReadOnlyMemory<byte> payload, string contentType, bool retain, int expiryS, CancellationToken cancellationToken)
    {
        var message = new MqttApplicationMessage
        {
            Topic = topic,
            Payload = new ReadOnlySequence<byte>(payload),
            PayloadFormatIndicator = MqttPayloadFormatIndicator.CharacterData,
            ContentType = contentType,
            Retain = retain,
            MessageExpiryInterval = (uint)expiryS,
            QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
        };
        MqttClientPublishResult result;
        using var limit = new CancellationTokenSource(_answerWithin, _time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, cancellationToken);
        try
        {
            result = await _client.PublishAsync(message, either.Token);
        }
        catch (Exception e) when (MqttTrouble.IsConnection(e) || limit.IsCancellationRequested)
        {
            // Whether the broker has it is not known now, so this connection is given up.
            string cause = limit.IsCancellationRequested
                ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"the broker did not answer within {_answerWithin.TotalSeconds:0.#} s")
                : MqttTrouble.Explain(e);
            End(cause);
            throw new MqttLinkException(cause, e);
        }

        if (!result.IsSuccess)
        {
            throw new MqttLinkException($"the broker refused {topic}: {MqttTrouble.Words(result.ReasonCode)}; allow this user to write there");
        }
    }

    /// <summary>Publishes a retained text.</summary>
    public Task PublishTextAsync(string topic, string text, int expiryS, CancellationToken cancellationToken) =>
        PublishAsync(topic, Encoding.UTF8.GetBytes(text), ContentTypes.Text, retain: true, expiryS, cancellationToken);

    /// <summary>Ends the session from this side.</summary>
    public void End(string cause) => _end.TrySetResult(cause);
}
