using System.Threading.Channels;
using BoothWatch.Outlook;
using BoothWatch.Service.Outputs;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>
/// Takes each assessment and wakes the streams. A stream that is slow misses assessments and gets the newest;
/// it never holds up the others, nor the loop.
/// </summary>
/// <param name="time">The clock.</param>
/// <param name="sources">Knows how fast the shop's day runs; null: in real time.</param>
public sealed class PageFeed(TimeProvider time, PageSources? sources = null) : IAssessmentOutput
{
    /// <summary>Most streams at once; further ones are refused, so that a runaway client cannot exhaust a small board.</summary>
    public const int MaxStreams = 64;

    private sealed record Arrival(long Sequence, Assessment? Assessment, long Timestamp, ClosingMargin? Closing);

    private readonly Lock _gate = new();
    private readonly List<Channel<long>> _streams = [];
    private readonly MarginTrail _trail = new();
    private volatile Arrival _latest = new(0, null, time.GetTimestamp(), null);

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
            return new CurrentState(latest.Sequence, latest.Assessment, time.GetElapsedTime(latest.Timestamp)) { Closing = latest.Closing };
        }
    }

    /// <inheritdoc/>
    public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken)
    {
        lock (_gate)
        {
            FirstTime ??= assessment.Time;
            long now = time.GetTimestamp();
            _latest = new Arrival(_latest.Sequence + 1, assessment, now, Closing(assessment, now));
            foreach (Channel<long> stream in _streams)
            {
                stream.Writer.TryWrite(_latest.Sequence);
            }
        }

        return Task.CompletedTask;
    }

    // A coat that must wait has no time left to speak of.
    private ClosingMargin? Closing(Assessment assessment, long now)
    {
        double nowS = now / (double)time.TimestampFrequency;
        _trail.Add(nowS, assessment.Film is { } film ? $"{film.Coat}/{film.Mix}/{film.RetarderPct}" : null, assessment.Film?.BlushMarginC ?? 0);
        return assessment is { Verdict: not Verdict.Wait, Film.BlushesBelowC: var usedUpAtC } ? _trail.Closing(nowS, sources?.Demo()?.Speed ?? 1, usedUpAtC) : null;
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
