using System.Globalization;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>Sends one message to its target, and notes in the outbox what came of it. Never throws. Safe for several threads.</summary>
internal sealed partial class AlertDelivery(Outbox outbox, AlertAges ages, TimeProvider time, ILogger logger)
{
    private static readonly TimeSpan AttemptLimit = TimeSpan.FromSeconds(15);

    /// <summary>Sends a row, unless it was set aside meanwhile.</summary>
    /// <param name="row">The row.</param>
    /// <param name="channel">Its channel.</param>
    /// <param name="lane">The lane of its target, which nobody else sends by meanwhile.</param>
    /// <param name="cut">Gives up in mid-delivery.</param>
    /// <returns>False when the outcome could not be noted, so that the row must be taken back.</returns>
    public async Task<bool> SendAsync(OutboxRow row, IAlertChannel channel, AlertLane lane, CancellationToken cut)
    {
        try
        {
            // A row that was handed over and could not be noted is only noted.
            if (lane.HandedOver != row.Id)
            {
                if (!outbox.Begin(row))
                {
                    ages.Forget(row);
                    return true;
                }

                await AttemptAsync(row, channel, cut);
                lane.HandedOver = row.Id;
            }

            outbox.Delivered(row, time.GetUtcNow());
            ages.Forget(row);
            int failures = lane.Succeeded();
            LogSent(row.Channel, row.Message.Id, row.Message.Title, failures);
            return true;
        }
        catch (Exception e)
        {
            return Note(row, lane, e);
        }
    }

    /// <summary>Sets a row aside for good.</summary>
    /// <param name="row">The row.</param>
    /// <param name="state">Why, in a word.</param>
    /// <param name="error">Why, in words; null when it is no error.</param>
    /// <param name="now">When, UTC.</param>
    public void SetAside(OutboxRow row, string state, string? error, DateTimeOffset now)
    {
        outbox.SetAside(row, state, error, now);
        ages.Forget(row);
        LogSetAside(row.Channel, row.Message.Title, state);
    }

    private async Task AttemptAsync(OutboxRow row, IAlertChannel channel, CancellationToken cut)
    {
        using var limit = new CancellationTokenSource(AttemptLimit, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, cut);
        try
        {
            AlertMessage message = row.Message with { Left = ages.Left(row, time.GetUtcNow()) };
            await channel.SendAsync(row.Target, message, either.Token);
        }
        catch (OperationCanceledException e)
        {
            string within = string.Create(CultureInfo.InvariantCulture, $"no answer within {AttemptLimit.TotalSeconds:0} s");
            throw new AlertDeliveryException(limit.IsCancellationRequested ? within : "stopped in mid-delivery", e) { MayHaveArrived = true };
        }
    }

    private bool Note(OutboxRow row, AlertLane lane, Exception error)
    {
        var known = error as AlertDeliveryException;
        DateTimeOffset now = time.GetUtcNow();
        TimeSpan wait = lane.Failed(known?.RetryAfter);
        LogFailed(known is null && lane.FailuresInARow == 1 ? error : null, row.Channel, row.Message.Title, lane.FailuresInARow, wait.TotalSeconds, error.Message);
        try
        {
            if (known is { IsFinal: true })
            {
                SetAside(row, "refused", error.Message, now);
                lane.Succeeded();
            }
            else if (lane.HandedOver == row.Id)
            {
                // It has left and only the note of it is missing: the next round takes the row back, and notes it.
                return false;
            }
            else
            {
                outbox.Failed(row, error.Message, known?.MayHaveArrived ?? true, now);
            }

            return true;
        }
        catch (Exception e)
        {
            // The row stands as sending; the next round takes it back.
            LogNotNoted(e, row.Channel, row.Message.Title, e.Message);
            return false;
        }
    }

    [LoggerMessage(EventId = 1, Level = LogLevel.Information, Message = "Alert by {Channel}, message {Id}: {Title} (after {Failures} failed attempts)")]
    private partial void LogSent(string channel, string id, string title, int failures);

    [LoggerMessage(EventId = 2, Level = LogLevel.Warning, Message = "Alert by {Channel} failed, \"{Title}\" ({FailuresInARow} in a row, next attempt in {WaitS:0.0} s): {Error}")]
    private partial void LogFailed(Exception? exception, string channel, string title, int failuresInARow, double waitS, string error);

    [LoggerMessage(EventId = 3, Level = LogLevel.Warning, Message = "Alert by {Channel} set aside, \"{Title}\": {Why}")]
    private partial void LogSetAside(string channel, string title, string why);

    [LoggerMessage(EventId = 5, Level = LogLevel.Warning, Message = "What came of \"{Title}\" by {Channel} could not be noted and will be looked at again: {Error}")]
    private partial void LogNotNoted(Exception exception, string channel, string title, string error);
}
