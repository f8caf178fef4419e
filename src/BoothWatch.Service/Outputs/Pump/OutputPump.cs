using System.Threading.Channels;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Pump;

/// <summary>
/// The bounded queue and the one worker that every output hangs behind. The assessment loop only ever calls
/// <see cref="Post"/>, so a slow or dead output delays neither the light nor another output.
/// </summary>
/// <remarks>
/// Drop policy: the newest assessment counts most. When the queue is full the oldest one is dropped; an assessment
/// waiting for its retry is older than the whole queue, so it is given up as soon as the queue has overflowed.
/// Every drop is counted; where only the newest counts, one that a newer overtook counts as superseded instead. Outputs throw on failure; this class alone catches, logs, counts and backs off.
/// </remarks>
public sealed partial class OutputPump : IHostedService, IDisposable
{
    private readonly IAssessmentOutput _output;
    private readonly OutputPumpOptions _options;
    private readonly TimeProvider _time;
    private readonly ILogger<OutputPump> _logger;
    private readonly BackOff _backOff;
    private readonly Channel<Assessment> _queue;
    private readonly CancellationTokenSource _stopping = new();
    private readonly CancellationTokenSource _flushEnd = new();
    private readonly Lock _gate = new();
    private OutputHealth _health;
    private long _dropped;
    private long _superseded;
    private long _droppedWhileFailing;
    private Task _run = Task.CompletedTask;

    /// <summary>A pump for one output; <paramref name="random"/> (0 up to 1) spreads the retries.</summary>
    public OutputPump(
        IAssessmentOutput output,
        OutputPumpOptions options,
        TimeProvider time,
        ILogger<OutputPump> logger,
        Func<double>? random = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options.Capacity, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(options.MaxAttempts, 1);
        (_output, _options, _time, _logger) = (output, options, time, logger);
        _backOff = new BackOff(options.FirstRetry, options.LongestRetry, random ?? Random.Shared.NextDouble);
        _health = new OutputHealth(output.Name, 0, 0, 0, 0, 0, null, null, null);
        _queue = Channel.CreateBounded<Assessment>(
            new BoundedChannelOptions(options.Capacity) { FullMode = BoundedChannelFullMode.DropOldest },
            _ => Interlocked.Increment(ref Overtaken));
    }

    /// <summary>How the output is doing now. Safe to read from any thread.</summary>
    public OutputHealth Health
    {
        get
        {
            OutputBacklog waiting = _output.Backlog
                ?? new OutputBacklog(_queue.Reader.Count, _queue.Reader.TryPeek(out Assessment? oldest) ? oldest.Time : null);
            lock (_gate)
            {
                return _health with
                {
                    Dropped = Interlocked.Read(ref _dropped),
                    Superseded = Interlocked.Read(ref _superseded),
                    Queued = waiting.Waiting,
                    OldestWaiting = _time.GetUtcNow() - waiting.Oldest,
                };
            }
        }
    }

    private ref long Overtaken => ref (_options.NewestOnly ? ref _superseded : ref _dropped);

    /// <summary>Hands over an assessment. Never blocks and never throws; safe from any thread.</summary>
    public void Post(Assessment assessment)
    {
        if (!_queue.Writer.TryWrite(assessment))
        {
            Interlocked.Increment(ref _dropped);
        }
    }

    /// <summary>Starts the worker.</summary>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        _run = Task.Run(RunAsync, CancellationToken.None);
        return Task.CompletedTask;
    }

    /// <summary>Hands over what still waits, for at most the flush limit, then stops.</summary>
    public async Task StopAsync(CancellationToken cancellationToken)
    {
        _queue.Writer.TryComplete();
        await _stopping.CancelAsync();
        try
        {
            await _run.WaitAsync(_options.FlushLimit, _time, cancellationToken);
        }
        catch (Exception e) when (e is TimeoutException or OperationCanceledException)
        {
            LogFlushCut(_output.Name, _options.FlushLimit.TotalSeconds, _queue.Reader.Count);
            await _flushEnd.CancelAsync();
        }

        DropWaiting();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _queue.Writer.TryComplete();
        _stopping.Dispose();
        _flushEnd.Dispose();
    }

    private async Task RunAsync()
    {
        while (!_flushEnd.IsCancellationRequested && await _queue.Reader.WaitToReadAsync(CancellationToken.None))
        {
            while (!_flushEnd.IsCancellationRequested && _queue.Reader.TryRead(out Assessment? assessment))
            {
                if (!await DeliverAsync(assessment) && _stopping.IsCancellationRequested)
                {
                    DropWaiting();
                    return;
                }
            }
        }
    }

    // False: given up, and counted.
    private async Task<bool> DeliverAsync(Assessment assessment)
    {
        for (int attempt = 1; attempt <= _options.MaxAttempts; attempt++)
        {
            long overtakenBefore = Interlocked.Read(ref Overtaken);
            bool lastAttempt = _stopping.IsCancellationRequested;
            if (await TryOnceAsync(assessment))
            {
                return true;
            }

            await Task.Delay(_backOff.NextWait(), _time, _stopping.Token)
                .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (Interlocked.Read(ref Overtaken) != overtakenBefore)
            {
                Interlocked.Increment(ref Overtaken);
                return false;
            }

            if (lastAttempt)
            {
                break;
            }
        }

        Interlocked.Increment(ref _dropped);
        return false;
    }

    private async Task<bool> TryOnceAsync(Assessment assessment)
    {
        using var limit = new CancellationTokenSource(_options.AttemptLimit, _time);
        using var attempt = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, _flushEnd.Token);
        try
        {
            await _output.HandleAsync(assessment, attempt.Token);
            NoteSuccess();
            return true;
        }
        catch (Exception e)
        {
            NoteFailure(limit.IsCancellationRequested && e is OperationCanceledException
                ? new TimeoutException($"took longer than {_options.AttemptLimit.TotalSeconds} s", e)
                : e);
            return false;
        }
    }

    private void NoteSuccess()
    {
        int failuresBefore = _backOff.FailuresInARow;
        _backOff.Reset();
        lock (_gate)
        {
            _health = _health with { Handled = _health.Handled + 1, FailuresInARow = 0, LastSuccess = _time.GetUtcNow() };
        }

        if (failuresBefore > 0)
        {
            LogRecovered(_output.Name, failuresBefore, Interlocked.Read(ref _dropped) - _droppedWhileFailing);
        }
    }

    private void NoteFailure(Exception error)
    {
        if (_backOff.FailuresInARow == 0)
        {
            _droppedWhileFailing = Interlocked.Read(ref _dropped);
        }

        lock (_gate)
        {
            _health = _health with
            {
                Failures = _health.Failures + 1,
                FailuresInARow = _health.FailuresInARow + 1,
                LastError = error.Message,
                LastErrorTime = _time.GetUtcNow(),
            };
        }

        // The stack once an outage, and none where the words say all: the log of a long one stays readable, and small.
        Exception? shown = _backOff.FailuresInARow == 0 && error is not OutputUnavailableException ? error : null;
        LogFailed(shown, _output.Name, _backOff.FailuresInARow + 1, error.Message);
    }

    private void DropWaiting()
    {
        while (_queue.Reader.TryRead(out _))
        {
            Interlocked.Increment(ref _dropped);
        }
    }

    [LoggerMessage(1, LogLevel.Warning, "Output {Output} failed ({FailuresInARow} in a row) and will be tried again: {Error}")]
    private partial void LogFailed(Exception? exception, string output, int failuresInARow, string error);

    [LoggerMessage(2, LogLevel.Information, "Output {Output} works again after {Failures} failed attempts; {Dropped} assessments were dropped meanwhile")]
    private partial void LogRecovered(string output, int failures, long dropped);

    [LoggerMessage(3, LogLevel.Warning, "Output {Output} did not finish within {LimitS} s of stopping; {Waiting} assessments still waited")]
    private partial void LogFlushCut(string output, double limitS, int waiting);
}
