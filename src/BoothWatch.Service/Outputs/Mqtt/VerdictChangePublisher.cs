using BoothWatch.Service.Coat;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>
/// Publishes the verdict changes of the journal, each at least once and in order, however long the broker was away; and a
/// retained list of the newest ones for a reader that was away itself.
/// </summary>
internal sealed class VerdictChangePublisher(
    IVerdictChanges journal, MqttTopics topics, IOptions<BoothOptions> booth, TimeProvider time)
{
    /// <summary>Changes in the retained list.</summary>
    public const int Recent = 20;

    private const int Batch = 100;
    private static readonly TimeSpan LookAfterChange = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LookEvery = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan WaitingHolds = TimeSpan.FromSeconds(2);

    // The journal keeps whole milliseconds, and a change can be as old as the process itself.
    private readonly DateTime _start = time.GetUtcNow().UtcDateTime.AddSeconds(-1);
    private readonly Lock _waitingGate = new();
    private (ChangesWaiting? Waiting, long At)? _waiting;
    private ChangeCursor? _cursor;
    private Verdict? _lastVerdict;
    private long _changedAt;
    private long _lookedAt;
    private bool _behind = true;

    /// <summary>The changes that wait for the broker, as of at most two seconds ago; null when they are not known. Safe from any thread.</summary>
    public ChangesWaiting? Waiting
    {
        get
        {
            lock (_waitingGate)
            {
                if (_waiting is not { } known || time.GetElapsedTime(known.At) >= WaitingHolds)
                {
                    _waiting = known = (WaitingNow(), time.GetTimestamp());
                }

                return known.Waiting;
            }
        }
    }

    /// <summary>Publishes what is new in the journal, when it is time to look there.</summary>
    public async Task PublishAsync(MqttSession session, Verdict verdict, bool anew, CancellationToken cancellationToken)
    {
        if (!IsTimeToLook(verdict, anew))
        {
            return;
        }

        _lookedAt = time.GetTimestamp();
        _behind = true;
        _cursor ??= new ChangeCursor(journal.JournalPath);
        bool any = false;
        for (IReadOnlyList<VerdictChangeEntry> next = Next(_cursor); next.Count > 0; next = Next(_cursor))
        {
            foreach (VerdictChangeEntry change in next)
            {
                if (!_cursor.Existed && change.Time < _start)
                {
                    _cursor.Skip(change.Id, change.Time);
                    continue;
                }

                byte[] payload = MqttJson.Write(VerdictChangeDocument.Of(change, booth.Value.Shop, booth.Value.Name));
                await session.PublishAsync(topics.VerdictChange, payload, ContentTypes.Json, retain: false, 0, cancellationToken);
                any = true;
                _cursor.Advance(change.Id, change.Time);
            }
        }

        if (any || anew)
        {
            byte[] recent = MqttJson.Write(journal.Newest(Recent).Select(change => VerdictChangeDocument.Of(change, booth.Value.Shop, booth.Value.Name)));
            await session.PublishAsync(topics.RecentVerdictChanges, recent, ContentTypes.Json, retain: true, 0, cancellationToken);
        }

        _behind = false;
    }

    // From the note in its file, which is only behind while a change is on its way. Without one, changes from before this start are not meant.
    private ChangesWaiting? WaitingNow()
    {
        try
        {
            ChangeCursor taken = new(journal.JournalPath);
            return journal.After(taken.Id, taken.Existed ? DateTime.UnixEpoch : _start);
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private bool IsTimeToLook(Verdict verdict, bool anew)
    {
        if (verdict != _lastVerdict)
        {
            (_lastVerdict, _changedAt) = (verdict, time.GetTimestamp());
        }

        // The journal is written beside us, so a change may reach it a moment after we have seen it.
        return anew || _behind || time.GetElapsedTime(_changedAt) < LookAfterChange || time.GetElapsedTime(_lookedAt) >= LookEvery;
    }

    // The change at the cursor is read again: when it is no longer the same, the journal is a new one, and is read from its start.
    private IReadOnlyList<VerdictChangeEntry> Next(ChangeCursor cursor)
    {
        if (cursor.Id == 0)
        {
            return journal.From(0, Batch);
        }

        IReadOnlyList<VerdictChangeEntry> next = journal.From(cursor.Id, Batch);
        bool isAnother = next.Count > 0
            ? next[0].Id == cursor.Id && next[0].Time != cursor.Time
            : journal.Newest(1) is { Count: > 0 };
        if (isAnother)
        {
            cursor.Skip(0, default);
            return journal.From(0, Batch);
        }

        return [.. next.Where(change => change.Id > cursor.Id)];
    }
}
