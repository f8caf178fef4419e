using System.Buffers;
using BoothWatch.Service.Outputs.Mqtt.Broker;
using BoothWatch.Service.Outputs.Pump;
using Microsoft.Extensions.Options;
using MQTTnet;
using MQTTnet.Packets;
using MQTTnet.Protocol;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>
/// Keeps the one connection to the broker: a loop that connects, subscribes, waits for the end and, after a growing wait,
/// begins again. Nobody waits for it: who publishes asks for the present session and fails when there is none.
/// </summary>
internal sealed partial class MqttLink(
    IOptions<MqttOptions> options,
    MqttTopics topics,
    EmbeddedBroker broker,
    IEnumerable<IMqttSubscriber> subscribers,
    TimeProvider time,
    ILogger<MqttLink> logger) : BackgroundService
{
    private static readonly TimeSpan Steady = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan FarewellLimit = TimeSpan.FromSeconds(2);

    private readonly MqttOptions _options = options.Value;
    private readonly IMqttSubscriber[] _subscribers = [.. subscribers];
    private readonly string _place = ConnectOptions.Place(options.Value);
    private readonly MqttClientFactory _factory = new();
    private readonly BackOff _backOff = new(
        TimeSpan.FromSeconds(options.Value.FirstRetryS), TimeSpan.FromSeconds(options.Value.LongestRetryS), Random.Shared.NextDouble);

    private TaskCompletionSource<MqttSession> _next = NoSession();
    private readonly TaskCompletionSource _tried = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private string _trouble = "";

    /// <summary>Connections made since the start.</summary>
    public int Connections { get; private set; }

    /// <summary>
    /// The present session; when there is none, the next one if it comes in time. Until the first try to connect has ended, which
    /// <c>mqtt:answerWithinS</c> bounds, nothing is wrong yet, and a start under load is waited for.
    /// </summary>
    /// <param name="patience">How long to wait for it once a try has ended.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <exception cref="MqttLinkException">There is none; the message says why.</exception>
    public async Task<MqttSession> SessionAsync(TimeSpan patience, CancellationToken cancellationToken)
    {
        await _tried.Task.WaitAsync(cancellationToken);
        try
        {
            return await Volatile.Read(ref _next).Task.WaitAsync(patience, time, cancellationToken);
        }
        catch (TimeoutException)
        {
            throw new MqttLinkException($"no connection to {_place}: {Volatile.Read(ref _trouble)}");
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        while (!stoppingToken.IsCancellationRequested)
        {
            string? cause = await ServeAsync(stoppingToken);
            if (cause is null)
            {
                return;
            }

            Volatile.Write(ref _trouble, cause);
            _tried.TrySetResult();
            TimeSpan wait = _backOff.NextWait();
            LogLevel level = _backOff.FailuresInARow == 1 ? LogLevel.Warning : LogLevel.Debug;
            LogNoConnection(level, _place, cause, wait.TotalSeconds);
            await Task.Delay(wait, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    /// <summary>One connection from start to end. Gives the cause of its end; null when the service stops.</summary>
    private async Task<string?> ServeAsync(CancellationToken stopping)
    {
        try
        {
            if (_options.Use == MqttOptions.Embedded && !broker.IsRunning)
            {
                return broker.Trouble;
            }

            using IMqttClient client = _factory.CreateMqttClient();
            var session = new MqttSession(client, TimeSpan.FromSeconds(_options.AnswerWithinS), time);
            client.ApplicationMessageReceivedAsync += args =>
            {
                Dispatch(args.ApplicationMessage);
                return Task.CompletedTask;
            };
            if (await ConnectAsync(client, stopping) is { } refusal)
            {
                return refusal;
            }

            return await UseAsync(client, session, stopping);
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            return null;
        }
        catch (Exception e)
        {
            // As in the pump, and for the same reason: whatever a broker or the library does to us must not end the service.
            return MqttTrouble.Explain(e);
        }
    }

    private async Task<string?> ConnectAsync(IMqttClient client, CancellationToken stopping)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(_options.AnswerWithinS), time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, stopping);
        MqttClientConnectResult result;
        try
        {
            result = await client.ConnectAsync(ConnectOptions.Of(_options, topics, broker.OwnSecret), either.Token);
        }
        catch (Exception e) when (limit.IsCancellationRequested && (MqttTrouble.IsConnection(e) || e is OperationCanceledException))
        {
            // The library has several words for it.
            return MqttTrouble.Explain(new TimeoutException());
        }

        if (result.ResultCode != MqttClientConnectResultCode.Success)
        {
            return MqttTrouble.Explain(result.ResultCode);
        }

        MqttWish[] wishes = [.. _subscribers.SelectMany(subscriber => subscriber.Wishes).DistinctBy(wish => wish.Filter)];
        if (wishes.Length > 0)
        {
            MqttClientSubscribeResult subscribed = await client.SubscribeAsync(
                new MqttClientSubscribeOptions { TopicFilters = [.. wishes.Select(FilterOf)] }, either.Token);
            foreach (MqttClientSubscribeResultItem item in subscribed.Items.Where(item => item.ResultCode > MqttClientSubscribeResultCode.GrantedQoS2))
            {
                string why = MqttTrouble.Words(item.ResultCode);
                LogSubscriptionRefused(item.TopicFilter.Topic, why);
            }
        }

        return null;
    }

    private async Task<string?> UseAsync(IMqttClient client, MqttSession session, CancellationToken stopping)
    {
        long begin = time.GetTimestamp();
        Connections++;
        LogConnected(_place, topics.Device);
        _next.SetResult(session);
        _tried.TrySetResult();
        try
        {
            return await session.Ended.WaitAsync(stopping);
        }
        catch (OperationCanceledException)
        {
            await FarewellAsync(client, session);
            return null;
        }
        finally
        {
            Volatile.Write(ref _next, NoSession());
            if (time.GetElapsedTime(begin) > Steady)
            {
                _backOff.Reset();
            }
        }
    }

    private async Task FarewellAsync(IMqttClient client, MqttSession session)
    {
        using var limit = new CancellationTokenSource(FarewellLimit, time);
        try
        {
            await session.PublishTextAsync(topics.State, "disconnected", 0, limit.Token);
            await client.DisconnectAsync(new MqttClientDisconnectOptions(), limit.Token);
        }
        catch (Exception e) when (MqttTrouble.IsConnection(e) || e is OperationCanceledException)
        {
            // Then the broker says "lost" for us.
        }
    }

    private static TaskCompletionSource<MqttSession> NoSession() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    private void Dispatch(MqttApplicationMessage message)
    {
        var arrival = new MqttArrival(message.Topic, message.Payload.ToArray(), message.Retain);
        foreach (IMqttSubscriber subscriber in _subscribers)
        {
            if (subscriber.Wishes.Any(wish => MqttTopicFilterComparer.Compare(message.Topic, wish.Filter) == MqttTopicFilterCompareResult.IsMatch))
            {
                subscriber.Take(arrival);
            }
        }
    }

    private static MqttTopicFilter FilterOf(MqttWish wish) => new()
    {
        Topic = wish.Filter,
        QualityOfServiceLevel = wish.QueueWhileAway ? MqttQualityOfServiceLevel.AtLeastOnce : MqttQualityOfServiceLevel.AtMostOnce,
        RetainAsPublished = wish.MarkSentRetained,
    };

    [LoggerMessage(EventId = 1, Level = LogLevel.Information, Message = "Publishing to {Place} under {Device}")]
    private partial void LogConnected(string place, string device);

    [LoggerMessage(EventId = 2, Message = "No connection to {Place}: {Cause} (trying again in {WaitS:0.0} s)")]
    private partial void LogNoConnection(LogLevel level, string place, string cause, double waitS);

    [LoggerMessage(EventId = 3, Level = LogLevel.Warning, Message = "The broker refused to let us read {Filter}: {Cause}; allow this user to read there")]
    private partial void LogSubscriptionRefused(string filter, string cause);
}
