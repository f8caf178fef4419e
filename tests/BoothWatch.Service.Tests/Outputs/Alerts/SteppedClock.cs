namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>A wall clock that is set while the monotonic one goes on.</summary>
internal sealed class SteppedClock(TimeProvider time) : TimeProvider
{
    public TimeSpan Step { get; set; }

    public override long TimestampFrequency => time.TimestampFrequency;

    public override DateTimeOffset GetUtcNow() => time.GetUtcNow() + Step;

    public override long GetTimestamp() => time.GetTimestamp();

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) => time.CreateTimer(callback, state, dueTime, period);
}
