namespace BoothWatch.Service.Jobs;

/// <summary>Makes one press of the many edges that a bouncing contact gives: a press counts once the contact has rested closed.</summary>
/// <remarks>Call <see cref="Edge"/> at every edge, from any thread. A press needs a release, also rested, before the next one counts.</remarks>
internal sealed class Debounce : IDisposable
{
    private readonly Lock _gate = new();
    private readonly TimeSpan _rest;
    private readonly Func<bool> _isClosed;
    private readonly Action _pressed;
    private readonly ITimer _timer;
    private bool _closed;

    /// <summary>A contact that is open now, or held closed since before the start: that is no press.</summary>
    /// <param name="time">The clock.</param>
    /// <param name="rest">How long the contact must rest.</param>
    /// <param name="isClosed">Reads the contact.</param>
    /// <param name="pressed">Called once a press, on a thread of the pool.</param>
    public Debounce(TimeProvider time, TimeSpan rest, Func<bool> isClosed, Action pressed)
    {
        (_rest, _isClosed, _pressed) = (rest, isClosed, pressed);
        _closed = isClosed();
        _timer = time.CreateTimer(_ => Rested(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>The level changed: the rest begins anew.</summary>
    public void Edge() => _timer.Change(_rest, Timeout.InfiniteTimeSpan);

    /// <inheritdoc/>
    public void Dispose() => _timer.Dispose();

    private void Rested()
    {
        bool press;
        lock (_gate)
        {
            bool closed = _isClosed();
            press = closed && !_closed;
            _closed = closed;
        }

        if (press)
        {
            _pressed();
        }
    }
}
