using BoothWatch.Checks;

namespace BoothWatch.Service.Checks;

/// <summary>The checks of one sensor, as the sum of its entries.</summary>
/// <param name="entries">Its entries, oldest first.</param>
internal sealed class CheckHistory(IEnumerable<CheckEntry> entries)
{
    private readonly CheckEntry[] _entries = [.. entries];

    /// <summary>Every check, oldest first, also of parts that were replaced and cancelled ones.</summary>
    public IReadOnlyList<PastCheck> Checks => [.. ChecksIn(_entries)];

    /// <summary>When the part was last replaced, UTC; null when never.</summary>
    public DateTimeOffset? Replaced => _entries.LastOrDefault(entry => entry.Step == CheckStep.Replaced)?.At;

    /// <summary>The results that count of the part that is fitted now, oldest first.</summary>
    /// <remarks>In the order of the journal, which is that of what happened, also where the clock was set meanwhile.</remarks>
    public IReadOnlyList<DatedResult> Results => [.. Counting(SinceReplaced(DateTimeOffset.MaxValue))];

    /// <summary>The newest result over a salt that found the part out of tolerance; null when none did.</summary>
    public DatedResult? Failure => Results
        .GroupBy(dated => dated.Result.Salt)
        .Select(salt => salt.Last())
        .LastOrDefault(dated => dated.Result.Outcome == CheckOutcome.Outside);

    /// <summary>What and where the part was that gave a result, as its sensor described it; null when not known.</summary>
    public string? PartOf(DatedResult result) => Checks.LastOrDefault(check => check.Results.Contains(result))?.Part;

    /// <summary>The results up to a time, of the part that was fitted then, oldest first.</summary>
    public IReadOnlyList<DatedResult> ResultsAsOf(DateTimeOffset time) => [.. Counting(SinceReplaced(time)).Where(dated => dated.At <= time)];

    /// <summary>The first result after a time, of the part that was fitted then; null when there is none.</summary>
    public DatedResult? FirstAfter(DateTimeOffset time)
    {
        DateTimeOffset until = _entries.FirstOrDefault(entry => entry.Step == CheckStep.Replaced && entry.At > time)?.At ?? DateTimeOffset.MaxValue;
        return Counting(_entries).OrderBy(dated => dated.At).FirstOrDefault(dated => dated.At > time && dated.At < until);
    }

    private static IEnumerable<PastCheck> ChecksIn(IEnumerable<CheckEntry> entries) =>
        entries.Where(entry => entry.Step != CheckStep.Replaced).GroupBy(entry => entry.CheckId).Select(check => PastCheck.Of([.. check]));

    private static IEnumerable<DatedResult> Counting(IEnumerable<CheckEntry> entries) =>
        ChecksIn(entries).Where(check => !check.IsCancelled).SelectMany(check => check.Results);

    // Not by the times of what came after it: a result with a wrong date still belongs to the part that gave it.
    private IEnumerable<CheckEntry> SinceReplaced(DateTimeOffset time) =>
        _entries.Skip(1 + Array.FindLastIndex(_entries, entry => entry.Step == CheckStep.Replaced && entry.At <= time));
}
