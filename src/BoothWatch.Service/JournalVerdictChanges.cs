using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service;

/// <summary>Shows the journal's verdict changes to MQTT; here, because the two may not know each other.</summary>
internal sealed class JournalVerdictChanges(SeriesQuery series, JournalLocation location) : IVerdictChanges
{
    public string JournalPath => location.Path;

    public IReadOnlyList<VerdictChangeEntry> From(long firstId, int most) => [.. series.VerdictChangesFrom(firstId, most).Select(EntryOf)];

    public IReadOnlyList<VerdictChangeEntry> Newest(int most) =>
        [.. series.VerdictChanges(DateTimeOffset.UnixEpoch, DateTimeOffset.MaxValue, most).OrderBy(change => change.Id).Select(EntryOf)];

    public ChangesWaiting? After(long lastId, DateTime from)
    {
        try
        {
            (int count, DateTimeOffset? oldest) = series.VerdictChangesAfter(lastId, from);
            return new ChangesWaiting(count, oldest?.UtcDateTime);
        }
        catch (JournalException)
        {
            return null; // The journal says so itself.
        }
    }

    private static VerdictChangeEntry EntryOf(VerdictChange change) => new(
        change.Id,
        change.Time.UtcDateTime,
        change.From,
        change.To,
        [.. change.Reasons.Select(reason => new VerdictChangeReason(reason.Rule, reason.Limit, reason.Finding, reason.Action))]);
}
