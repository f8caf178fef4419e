namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>
/// Whether messages are still news: by the monotonic clock once they have been seen, so that a wall clock that is set meanwhile makes
/// neither old of new nor new of old. Safe for several threads.
/// </summary>
internal sealed class AlertAges(TimeProvider time)
{
    private static readonly TimeSpan ClockSlack = TimeSpan.FromMinutes(1);

    private readonly Lock _gate = new();
    private readonly Dictionary<long, (long SeenAt, TimeSpan Left)> _lives = [];

    /// <summary>
    /// How long the message is news still; zero once it has expired. One that was written in the future is of a clock that was wrong, and
    /// counts as old.
    /// </summary>
    public TimeSpan Left(OutboxRow row, DateTimeOffset now)
    {
        lock (_gate)
        {
            if (!_lives.TryGetValue(row.Id, out (long SeenAt, TimeSpan Left) life))
            {
                life = (time.GetTimestamp(), row.Message.Time > now + ClockSlack ? TimeSpan.Zero : row.Message.LeftAt(now));
                _lives[row.Id] = life;
            }

            TimeSpan left = life.Left - time.GetElapsedTime(life.SeenAt);
            return left > TimeSpan.Zero ? left : TimeSpan.Zero;
        }
    }

    /// <summary>Forgets a message that is done.</summary>
    public void Forget(OutboxRow row)
    {
        lock (_gate)
        {
            _lives.Remove(row.Id);
        }
    }
}
