using System.Threading.Channels;
using BoothWatch.Service.Outputs;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>
/// Takes each assessment and wakes the streams. A stream that is slow misses assessments and gets the newest;
/// it never holds up the others, nor the loop.
/// </summary>
public sealed class PageFeed(TimeProvider time) : IAssessmentOutput
{
    /// <summary>Most streams at once; further ones are refused, so that a runaway client cannot exhaust a small board.</summary>
    public const int MaxStreams = 64;

    private sealed record Arrival(long Sequence, Assessment? Assessment, long Timestamp);

    private readonly Lock _gate = new();
    private readonly List<Channel<long>> _streams = [];
    private volatile Arrival _latest = new(0, null, time.GetTimestamp());

    /// <inheritdoc/>
    public string Name => "page";

    /// <summary>Time of the first assessment since start; null before it.</summary>
    public DateTimeOffset? FirstTime { get; private set; }

    /// <summary>The latest assessment and its age now.</summary>
    public CurrentState Current
    {
        get
        {
            Arrival latest = _latest;
            return new CurrentState(latest.Sequence, latest.Assessment, time.GetElapsedTime(latest.Timestamp));
        }
    }

    /// <inheritdoc/>
    public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken)
    {
        lock (_gate)
        {
            FirstTime ??= assessment.Time;
            _latest = new Arrival(_latest.Sequence + 1, assessment, time.GetTimestamp());
            foreach (Channel<long> stream in _streams)
            {
                stream.Writer.TryWrite(_latest.Sequence);
            }
        }

        return Task.CompletedTask;
    }

    /// <summary>
    /// Opens a stream that says, by its sequence, that there is a new assessment: take <see cref="Current"/> when you send it, or its age is old news.
    /// Null when <see cref="MaxStreams"/> are open. Give it back with <see cref="Close"/>.
    /// </summary>
    public Channel<long>? TryOpen()
    {
        Channel<long> stream = Channel.CreateBounded<long>(
            new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true });
        lock (_gate)
        {
            if (_streams.Count >= MaxStreams)
            {
                return null;
            }

            _streams.Add(stream);
        }

        return stream;
    }

    /// <summary>Ends a stream.</summary>
    public void Close(Channel<long> stream)
    {
        lock (_gate)
        {
            _streams.Remove(stream);
        }
    }
}
