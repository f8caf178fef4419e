using BoothWatch.Service.Outputs.Pump;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>
/// Decides what leaves the outbox, and when; <see cref="AlertDelivery"/> sends it. Every target of every channel has a lane of its own with its own waits after failures, so that one
/// that is dead delays no other; within a lane messages keep their order. What is too old is set aside, never sent.
/// </summary>
/// <remarks>
/// Like the pump of an output, this class and <see cref="AlertDelivery"/> alone catch, count and back off: whatever a receiver does to us
/// must not end the service. A row is sent once, and once more when the program ended between the receiver's answer and the note of it.
/// </remarks>
internal sealed partial class AlertDispatcher : BackgroundService
{
    private const int MostRows = 500;
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan SweepEvery = TimeSpan.FromHours(6);

    private readonly Outbox _outbox;
    private readonly Dictionary<string, IAlertChannel> _channels;
    private readonly TimeProvider _time;
    private readonly ILogger<AlertDispatcher> _logger;
    private readonly Func<double> _random;
    private readonly AlertAges _ages;
    private readonly AlertDelivery _delivery;
    private readonly SemaphoreSlim _wake = new(0);
    private readonly CancellationTokenSource _cut = new();
    private readonly Lock _gate = new();
    private readonly Dictionary<(string, string), AlertLane> _lanes = [];
    private readonly List<Task> _running = [];
    private volatile bool _recovered;
    private long? _sweptAt;

    /// <summary>A dispatcher; <paramref name="random"/> (0 up to 1) spreads the retries.</summary>
    public AlertDispatcher(
        Outbox outbox, IEnumerable<IAlertChannel> channels, TimeProvider time, ILogger<AlertDispatcher> logger, Func<double>? random = null)
    {
        (_outbox, _time, _logger, _random) = (outbox, time, logger, random ?? Random.Shared.NextDouble);
        _channels = channels.ToDictionary(channel => channel.Name);
        _ages = new AlertAges(time);
        _delivery = new AlertDelivery(outbox, _ages, time, logger);
    }

    /// <summary>Says that there is something new to send. Never blocks; safe from any thread.</summary>
    public void Wake()
    {
        // One is enough: a round takes all there is.
        if (_wake.CurrentCount == 0)
        {
            _wake.Release();
        }
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        _wake.Dispose();
        _cut.Dispose();
        base.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        BackOff trouble = new(TimeSpan.FromSeconds(1), Look, _random);
        while (!stoppingToken.IsCancellationRequested)
        {
            TimeSpan wait;
            try
            {
                wait = Round();
                trouble.Reset();
            }
            catch (Exception e)
            {
                wait = trouble.NextWait();
                LogNoOutbox(trouble.FailuresInARow == 1 ? e : null, wait.TotalSeconds, e.Message);
            }

            using var limit = new CancellationTokenSource(wait, _time);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, stoppingToken);
            await _wake.WaitAsync(either.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        await FinishAsync();
    }

    /// <summary>Begins to send all that may be sent now.</summary>
    /// <returns>How long until the next look, if nobody wakes us before.</returns>
    internal TimeSpan Round()
    {
        if (!_recovered)
        {
            _outbox.Recover();
            _recovered = true;
        }

        DateTimeOffset now = _time.GetUtcNow();
        if (_sweptAt is not { } swept || _time.GetElapsedTime(swept) > SweepEvery)
        {
            _sweptAt = _time.GetTimestamp();
            _outbox.Sweep(now);
        }

        TimeSpan next = Look;
        HashSet<(string, string)> taken = [];
        foreach (OutboxRow row in _outbox.Waiting(MostRows))
        {
            // First of all the age, by the monotonic clock: a wall clock that is set back may hold nothing beyond it.
            if (_ages.Left(row, now) <= TimeSpan.Zero)
            {
                _delivery.SetAside(row, "expired", null, now);
            }
            else if (row.IsHeld && row.NotBefore > now)
            {
                next = Least(next, row.NotBefore - now);
            }
            else if (!_channels.TryGetValue(row.Channel, out IAlertChannel? channel) || channel.OffBecause is not null)
            {
                _delivery.SetAside(row, "off", null, now);
            }
            else if (taken.Add(row.Lane))
            {
                next = Least(next, Take(row, channel));
            }
        }

        return next;
    }

    /// <summary>Completes when nothing is being sent.</summary>
    internal Task IdleAsync()
    {
        lock (_gate)
        {
            _running.RemoveAll(task => task.IsCompleted);
            return Task.WhenAll(_running.ToArray());
        }
    }

    private static TimeSpan Least(TimeSpan one, TimeSpan other) => one < other ? one : other;

    private TimeSpan Take(OutboxRow row, IAlertChannel channel)
    {
        lock (_gate)
        {
            if (!_lanes.TryGetValue(row.Lane, out AlertLane? lane))
            {
                _lanes[row.Lane] = lane = new AlertLane(_time, _random);
            }

            if (lane.IsBusy)
            {
                return Look;
            }

            if (lane.Left is { } left && left > TimeSpan.Zero)
            {
                return left;
            }

            lane.IsBusy = true;
            _running.RemoveAll(task => task.IsCompleted);
            _running.Add(Task.Run(() => SendAsync(row, channel, lane)));
            return Look;
        }
    }

    private async Task SendAsync(OutboxRow row, IAlertChannel channel, AlertLane lane)
    {
        try
        {
            if (!await _delivery.SendAsync(row, channel, lane, _cut.Token))
            {
                _recovered = false;
            }
        }
        finally
        {
            lock (_gate)
            {
                lane.IsBusy = false;
            }

            Wake();
        }
    }

    private async Task FinishAsync()
    {
        try
        {
            await IdleAsync().WaitAsync(Farewell, _time);
        }
        catch (TimeoutException)
        {
            await _cut.CancelAsync();
            await IdleAsync();
        }
    }

    [LoggerMessage(EventId = 4, Level = LogLevel.Warning, Message = "The outbox of alerts is not to be had, next look in {WaitS:0.0} s: {Error}")]
    private partial void LogNoOutbox(Exception? exception, double waitS, string error);
}
