using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace BoothWatch.Service.Page;

/// <summary>
/// Server-sent events (WHATWG HTML, section 9.2) of the newest state: one event an assessment, and a heartbeat when none comes.
/// The state is taken at the moment of sending, so that a slow reader never gets an old verdict as a new one.
/// A heartbeat keeps the connection, and never counts as data; once the assessment is stale, it is replaced by an event that says wait.
/// </summary>
public sealed class LiveEvents(PageFeed feed, TimeProvider time)
{
    /// <summary>Longest silence on the wire.</summary>
    public static readonly TimeSpan Heartbeat = TimeSpan.FromSeconds(2);

    /// <summary>How long a browser waits before it connects again.</summary>
    public static readonly TimeSpan Retry = TimeSpan.FromSeconds(2);

    /// <summary>Type of the heartbeat event.</summary>
    public const string HeartbeatEvent = "heartbeat";

    /// <summary>The events, beginning with the present state. <paramref name="stream"/> is closed at the end.</summary>
    public async IAsyncEnumerable<SseItem<string>> Read(
        Channel<long> stream,
        string eventType,
        Func<CurrentState, string> render,
        [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        try
        {
            CurrentState current = feed.Current;
            long sent = current.Sequence;
            yield return Item(current, eventType, render) with { ReconnectionInterval = Retry };

            Task<bool> more = stream.Reader.WaitToReadAsync(cancellationToken).AsTask();
            while (true)
            {
                Task first = await Task.WhenAny(more, Task.Delay(Heartbeat, time, cancellationToken));
                if (cancellationToken.IsCancellationRequested)
                {
                    yield break;
                }

                if (first != more)
                {
                    current = feed.Current;
                    yield return current.IsStale
                        ? Item(current, eventType, render)
                        : new SseItem<string>("", HeartbeatEvent);
                    continue;
                }

                if (!await more)
                {
                    yield break;
                }

                if (stream.Reader.TryRead(out long news) && news > sent)
                {
                    current = feed.Current;
                    sent = current.Sequence;
                    yield return Item(current, eventType, render);
                }

                more = stream.Reader.WaitToReadAsync(cancellationToken).AsTask();
            }
        }
        finally
        {
            feed.Close(stream);
        }
    }

    private static SseItem<string> Item(CurrentState state, string eventType, Func<CurrentState, string> render) =>
        new(render(state), eventType) { EventId = state.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture) };
}
