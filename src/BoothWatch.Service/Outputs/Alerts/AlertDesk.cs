using System.Globalization;
using System.Threading.Channels;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>What people can do about alerts: acknowledge one, and try a channel.</summary>
internal sealed partial class AlertDesk(
    AlertStore store, Outbox outbox, IEnumerable<IAlertChannel> channels, AlertSources sources, TimeProvider time, ILogger<AlertDesk> logger) : BackgroundService
{
    private const int MostWaiting = 100;
    private static readonly TimeSpan TestLimit = TimeSpan.FromSeconds(15);

    private readonly Channel<(string Alert, string By)> _soon = Channel.CreateBounded<(string, string)>(
        new BoundedChannelOptions(MostWaiting) { FullMode = BoundedChannelFullMode.DropOldest });

    /// <summary>Every channel.</summary>
    public IReadOnlyList<IAlertChannel> Channels { get; } = [.. channels];

    /// <summary>Acknowledges an alert.</summary>
    /// <param name="alert">Its id.</param>
    /// <param name="by">Where: page, link or mqtt.</param>
    /// <returns>The alert; null when there is none of the id.</returns>
    public AlertRow? Acknowledge(string alert, string by)
    {
        AlertRow? row = store.Acknowledge(alert, by, time.GetUtcNow());
        LogAcknowledged(row is null ? "unknown alert" : row.Title, alert, by);
        return row;
    }

    /// <summary>Acknowledges an alert in the background. Never blocks and never throws; safe from any thread.</summary>
    public void AcknowledgeSoon(string alert, string by) => _soon.Writer.TryWrite((alert, by));

    /// <summary>Sends a test message by a channel, to everyone it goes to, and waits for the outcome.</summary>
    /// <returns>How many took it, and the last error; null when there was none.</returns>
    public async Task<(int Taken, string? Error)> TestAsync(IAlertChannel channel, CancellationToken cancellationToken)
    {
        IReadOnlyList<string> targets = channel.Targets();
        if (targets.Count == 0)
        {
            return (0, "nobody has subscribed yet");
        }

        DateTimeOffset now = time.GetUtcNow();
        string id = AlertIds.New(now);
        AlertMessage message = new()
        {
            Id = id,
            Alert = id,
            Type = AlertMessageType.Test,
            Key = "test",
            Shop = sources.Shop,
            Booth = sources.Booth,
            Title = "Test message",
            Finding = "messages of this booth arrive here",
            Action = "",
            Began = now,
            Time = now,
            Expires = now + AlertLifetime.Test,
        };
        string?[] errors = await Task.WhenAll(targets.Select(target => TryAsync(channel, target, message, cancellationToken)));
        return (errors.Count(error => error is null), errors.LastOrDefault(error => error is not null));
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        try
        {
            await foreach ((string alert, string by) in _soon.Reader.ReadAllAsync(stoppingToken))
            {
                AcknowledgeOrLog(alert, by);
            }
        }
        catch (OperationCanceledException)
        {
            // The service stops.
        }
    }

    private void AcknowledgeOrLog(string alert, string by)
    {
        try
        {
            Acknowledge(alert, by);
        }
        catch (OutputUnavailableException e)
        {
            // A full disk must not end the service.
            LogNotKept(e, alert, e.Message);
        }
    }

    private async Task<string?> TryAsync(IAlertChannel channel, string target, AlertMessage message, CancellationToken cancellationToken)
    {
        using var limit = new CancellationTokenSource(TestLimit, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, cancellationToken);
        string? error = null;
        try
        {
            await channel.SendAsync(target, message, either.Token);
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            error = string.Create(CultureInfo.InvariantCulture, $"no answer within {TestLimit.TotalSeconds:0} s");
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            error = e.Message;
        }

        outbox.Tested(message, channel.Name, target, error, time.GetUtcNow());
        return error;
    }

    [LoggerMessage(EventId = 1, Level = LogLevel.Information, Message = "Acknowledged \"{Title}\" ({Alert}) by {By}")]
    private partial void LogAcknowledged(string title, string alert, string by);

    [LoggerMessage(EventId = 2, Level = LogLevel.Warning, Message = "Acknowledging {Alert} was not kept: {Error}")]
    private partial void LogNotKept(Exception exception, string alert, string error);
}
