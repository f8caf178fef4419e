using BoothWatch.Service.Outputs.Pump;

namespace BoothWatch.Service.Outputs.Influx;

/// <summary>
/// Ships the journal to InfluxDB in the background: reads behind the mark, writes a batch, and moves the mark once the server
/// has it. It hangs off the journal, not off the assessment loop, so an outage of any length costs neither the light nor a row.
/// </summary>
/// <remarks>
/// Like the pump of an output, this class alone catches, counts and backs off: whatever goes wrong here must not end the
/// service. Between the server's answer and the mark the process may die; the rows are then written again, and replace
/// themselves.
/// </remarks>
public sealed partial class InfluxShipper : BackgroundService
{
    /// <summary>Name on the page and in the logs.</summary>
    public const string Name = "influx";

    private readonly BatchSplitter? _splitter;
    private readonly IReadOnlyList<IJournalFeed> _feeds;
    private readonly InfluxOptions _options;
    private readonly TimeProvider _time;
    private readonly ILogger<InfluxShipper> _logger;
    private readonly BackOff _backOff;
    private readonly Lock _gate = new();
    private OutputHealth _health = new(Name, 0, 0, 0, 0, 0, null, null, null);
    private DateTimeOffset? _oldest;
    private long? _missedBefore;

    /// <summary>A shipper; without a <paramref name="writer"/> it does nothing. <paramref name="random"/> (0 up to 1) spreads the retries.</summary>
    public InfluxShipper(
        IEnumerable<IJournalFeed> feeds,
        IPointWriter? writer,
        Points points,
        InfluxOptions options,
        TimeProvider time,
        ILogger<InfluxShipper> logger,
        Func<double>? random = null)
    {
        (_feeds, _options, _time, _logger) = ([.. feeds], options, time, logger);
        _splitter = writer is null ? null : new BatchSplitter(writer, points, LogSetAside);
        var longest = TimeSpan.FromSeconds(options.LongestRetryS);
        _backOff = new BackOff(TimeSpan.FromSeconds(1), longest, random ?? Random.Shared.NextDouble);
    }

    /// <summary>How shipping fares, as of the last look; null while it is off. Safe to read from any thread.</summary>
    public OutputHealth? Health
    {
        get
        {
            lock (_gate)
            {
                return _splitter is null ? null : _health with { OldestWaiting = _oldest is { } oldest ? _time.GetUtcNow() - oldest : null };
            }
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        if (_splitter is null)
        {
            return;
        }

        LogStarted(_options.Url, _options.Bucket);
        while (!stoppingToken.IsCancellationRequested)
        {
            TimeSpan wait = await RoundAsync(stoppingToken);
            if (wait > TimeSpan.Zero)
            {
                await Task.Delay(wait, _time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    /// <summary>Ships one batch of every feed.</summary>
    /// <returns>How long to wait before the next round; zero when more waits already.</returns>
    internal async Task<TimeSpan> RoundAsync(CancellationToken cancellationToken)
    {
        bool more = false;
        try
        {
            foreach (IJournalFeed feed in _feeds)
            {
                IReadOnlyList<FeedRow> rows = feed.Read(_options.BatchRows);
                if (rows.Count > 0 && await _splitter!.ShipAsync(feed, rows, NoteShipped, cancellationToken) is { Kind: not WriteAnswerKind.Accepted } answer)
                {
                    Look();
                    return NoteFailure(null, answer.Text, answer.RetryAfter);
                }

                more |= rows.Count == _options.BatchRows;
            }

            Look();
            NoteRound();
            return more ? TimeSpan.Zero : TimeSpan.FromSeconds(_options.EveryS);
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            return TimeSpan.Zero;
        }
        catch (Exception e)
        {
            return NoteFailure(e, e.Message, null);
        }
    }

    private void Look()
    {
        FeedState[] states = [.. _feeds.Select(feed => feed.State())];
        long missed = states.Sum(state => state.Missed);
        _missedBefore ??= missed;
        lock (_gate)
        {
            _oldest = states.Min(state => state.Oldest);
            _health = _health with
            {
                Queued = (int)Math.Min(int.MaxValue, states.Sum(state => state.Waiting)),
                Dropped = missed - _missedBefore.Value,
                SetAside = states.Sum(state => state.SetAside),
            };
        }
    }

    private void NoteShipped(int rows)
    {
        lock (_gate)
        {
            _health = _health with { Handled = _health.Handled + rows, LastSuccess = _time.GetUtcNow() };
        }
    }

    private void NoteRound()
    {
        if (_backOff.FailuresInARow > 0)
        {
            LogRecovered(_backOff.FailuresInARow);
        }

        _backOff.Reset();
        lock (_gate)
        {
            _health = _health with { FailuresInARow = 0 };
        }
    }

    private TimeSpan NoteFailure(Exception? error, string text, TimeSpan? retryAfter)
    {
        TimeSpan wait = _backOff.NextWait();
        wait = retryAfter > wait ? retryAfter.Value : wait;
        int waiting;
        lock (_gate)
        {
            _health = _health with
            {
                Failures = _health.Failures + 1,
                FailuresInARow = _backOff.FailuresInARow,
                LastError = text,
                LastErrorTime = _time.GetUtcNow(),
            };
            waiting = _health.Queued;
        }

        LogFailed(error, _backOff.FailuresInARow, waiting, wait.TotalSeconds, text);
        return wait;
    }

    [LoggerMessage(1, LogLevel.Information, "The journal is shipped to {Url}, bucket {Bucket}")]
    private partial void LogStarted(string url, string bucket);

    [LoggerMessage(2, LogLevel.Warning, "Shipping failed ({FailuresInARow} in a row, {Waiting} rows wait in the journal); next attempt in {WaitS:0.0} s: {Error}")]
    private partial void LogFailed(Exception? exception, int failuresInARow, int waiting, double waitS, string error);

    [LoggerMessage(3, LogLevel.Information, "Shipping works again after {Failures} failed attempts")]
    private partial void LogRecovered(int failures);

    [LoggerMessage(4, LogLevel.Warning, "The server refuses row {Row} of {Measurement}; it is set aside in the journal and the rest goes on: {Reason}")]
    private partial void LogSetAside(string measurement, long row, string reason);
}
