namespace BoothWatch.Service.Tests.Outputs.Light;

/// <summary>A clock for one program that waits: each wait is over at once, and the clock has moved on by it.</summary>
internal sealed class JumpingTime : TimeProvider
{
    private long _elapsedTicks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <summary>Called before each wait, with the time since the start.</summary>
    public Action<TimeSpan>? Waiting { get; set; }

    public TimeSpan Elapsed => TimeSpan.FromTicks(Interlocked.Read(ref _elapsedTicks));

    public override long GetTimestamp() => Interlocked.Read(ref _elapsedTicks);

    public override DateTimeOffset GetUtcNow() => DateTimeOffset.UnixEpoch + Elapsed;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        Waiting?.Invoke(Elapsed);
        Interlocked.Add(ref _elapsedTicks, dueTime.Ticks);
        ThreadPool.QueueUserWorkItem(_ => callback(state));
        return new Over();
    }

    private sealed class Over : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose()
        {
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
