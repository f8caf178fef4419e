using BoothWatch.Service.Coat;
using BoothWatch.Service.Outputs.Mqtt.Homie;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>
/// Publishes the live state: Homie properties and one JSON snapshot, retained with an expiry and renewed in time, all of it anew
/// after every new connection. Verdict changes follow from the journal, each at least once.
/// </summary>
internal sealed class MqttOutput(
    MqttLink link,
    VerdictChangePublisher changes,
    MqttTopics topics,
    IOptions<MqttOptions> options,
    IOptions<BoothOptions> booth,
    TimeProvider time) : IAssessmentOutput
{
    // A first failure is told at once; after that one waits for the connection, so that an outage of a day is a few hundred
    // lines in the log and its end is noticed at once.
    private static readonly TimeSpan FirstPatience = TimeSpan.FromSeconds(1.5);
    private static readonly TimeSpan LaterPatience = TimeSpan.FromMinutes(4);

    // What has waited longer for the connection is no live state any more; the newest follows right behind it.
    private static readonly TimeSpan Live = TimeSpan.FromSeconds(5);

    private readonly int _expiryS = options.Value.ExpiryS;
    private readonly TimeSpan _renewAfter = TimeSpan.FromSeconds(options.Value.ExpiryS / 3.0);
    private readonly Dictionary<HomieProperty, (string? Payload, long At)> _sent = [];
    private MqttSession? _told;
    private Assessment? _taken;
    private long _takenAt;
    private bool _isAway;

    /// <inheritdoc/>
    public string Name => "mqtt";

    /// <summary>The last assessment that was published whole; null before the first.</summary>
    public Assessment? Published { get; private set; }

    /// <summary>The verdict changes that wait for the broker; a live state never waits, the next one takes its place.</summary>
    public OutputBacklog? Backlog => changes.Waiting is { } waiting ? new OutputBacklog(waiting.Count, waiting.Oldest) : null;

    /// <inheritdoc/>
    /// <exception cref="MqttLinkException">There is no connection, or the broker did not take it.</exception>
    public async Task HandleAsync(Assessment assessment, CancellationToken cancellationToken)
    {
        if (!ReferenceEquals(assessment, _taken))
        {
            (_taken, _takenAt) = (assessment, time.GetTimestamp());
        }

        TimeSpan patience = _isAway ? LaterPatience : FirstPatience;
        _isAway = true;
        MqttSession session = await link.SessionAsync(patience, cancellationToken);
        _isAway = false;
        if (time.GetElapsedTime(_takenAt) <= Live)
        {
            await PublishAsync(session, assessment, cancellationToken);
            Published = assessment;
        }
    }

    private async Task PublishAsync(MqttSession session, Assessment assessment, CancellationToken cancellationToken)
    {
        bool anew = session != _told;
        if (anew)
        {
            _sent.Clear();
            await session.PublishTextAsync(topics.State, "init", 0, cancellationToken);
            await session.PublishAsync(
                topics.Description, HomieDescription.Of(booth.Value.Shop, booth.Value.Name), ContentTypes.Json, retain: true, 0, cancellationToken);
        }

        foreach (HomieProperty property in HomieProperties.All)
        {
            await PublishAsync(session, property, property.Value(assessment), cancellationToken);
        }

        byte[] document = MqttJson.Write(AssessmentDocument.Of(assessment, booth.Value.Shop, booth.Value.Name, booth.Value.Unit));
        await session.PublishAsync(topics.Assessment, document, ContentTypes.Json, retain: true, _expiryS, cancellationToken);
        if (anew)
        {
            await session.PublishTextAsync(topics.State, "ready", 0, cancellationToken);
            _told = session;
        }

        await changes.PublishAsync(session, assessment.Verdict, anew, cancellationToken);
    }

    private async Task PublishAsync(MqttSession session, HomieProperty property, string? payload, CancellationToken cancellationToken)
    {
        bool isKnown = _sent.TryGetValue(property, out (string? Payload, long At) last) && last.Payload == payload;
        bool isFresh = payload is null || time.GetElapsedTime(last.At) < _renewAfter;
        if (isKnown && isFresh)
        {
            return;
        }

        await session.PublishTextAsync(topics.Property(property.Node, property.Id), payload ?? "", payload is null ? 0 : _expiryS, cancellationToken);
        _sent[property] = (payload, time.GetTimestamp());
    }
}
