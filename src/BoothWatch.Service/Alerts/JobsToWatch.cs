using BoothWatch.Alerts;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service.Alerts;

/// <summary>
/// The running jobs with their timers and watches, looked up beside the alerts every few seconds and after every change, because
/// reckoning how a film dries takes longer than an assessment may wait.
/// </summary>
internal sealed partial class JobsToWatch(JobStore store, JobClock clock, TimeProvider time, ILogger<JobsToWatch> logger) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(10);

    private readonly SemaphoreSlim _changed = new(0);
    private IReadOnlyList<WatchedJob>? _jobs;
    private bool _failing;

    /// <summary>What was last found; null while it is not known.</summary>
    public IReadOnlyList<WatchedJob>? Jobs => Volatile.Read(ref _jobs);

    /// <inheritdoc/>
    public override void Dispose()
    {
        store.Changed -= Note;
        _changed.Dispose();
        base.Dispose();
    }

    /// <summary>Looks now.</summary>
    internal void Look()
    {
        try
        {
            Volatile.Write(ref _jobs, [.. store.Running().Select(Of)]);
            _failing = false;
        }
        catch (JournalException e)
        {
            Unknown(null, e.Message);
        }
        catch (Exception e)
        {
            // The figures of a job that the film model cannot reckon with must not put out the light. It is a fault of ours, so with the stack.
            Unknown(e, e.Message);
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        store.Changed += Note;
        while (!stoppingToken.IsCancellationRequested)
        {
            Look();
            using var limit = new CancellationTokenSource(Every, time);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, stoppingToken);
            await _changed.WaitAsync(either.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private WatchedJob Of(Job job)
    {
        JobNow now = clock.Of(job);
        return new WatchedJob(job, now.Timers, now.Watch);
    }

    private void Unknown(Exception? fault, string why)
    {
        Volatile.Write(ref _jobs, null);
        if (!_failing)
        {
            LogUnknown(fault, why);
        }

        _failing = true;
    }

    private void Note(Job job)
    {
        if (_changed.CurrentCount == 0)
        {
            _changed.Release();
        }
    }

    [LoggerMessage(EventId = 1, Level = LogLevel.Warning, Message = "Timers and soft films are not watched for alerts now: {Error}")]
    private partial void LogUnknown(Exception? exception, string error);
}
