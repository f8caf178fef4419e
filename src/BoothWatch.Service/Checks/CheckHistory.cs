using BoothWatch.Checks;

namespace BoothWatch.Service.Checks;

/// <summary>The checks of one sensor, as the sum of its entries.</summary>
/// <param name="entries">Its entries, oldest first.</param>
internal sealed class CheckHistory(IEnumerable<CheckEntry> entries)
{
    private readonly CheckEntry[] _entries = [.. entries];

    /// <summary>Every check, oldest first, also of parts that were replaced and cancelled ones.</summary>
    public IReadOnlyList<PastCheck> Checks =>
        [.. _entries.Where(entry => entry.Step != CheckStep.Replaced).GroupBy(entry => entry.CheckId).Select(check => PastCheck.Of([.. check]))];

    /// <summary>When the part was last replaced, UTC; null when never.</summary>
    public DateTimeOffset? Replaced => ReplacedBefore(DateTimeOffset.MaxValue);

    /// <summary>The results that count of the part that is fitted now, oldest first.</summary>
    public IReadOnlyList<DatedResult> Results => ResultsAsOf(DateTimeOffset.MaxValue);

    /// <summary>The newest result over a salt that found the part out of tolerance; null when none did.</summary>
    public DatedResult? Failure => Results
        .GroupBy(dated => dated.Result.Salt)
        .Select(salt => salt.Last())
        .LastOrDefault(dated => dated.Result.Outcome == CheckOutcome.Outside);

    /// <summary>The results up to a time, of the part that was fitted then, oldest first.</summary>
    public IReadOnlyList<DatedResult> ResultsAsOf(DateTimeOffset time)
    {
        DateTimeOffset from = ReplacedBefore(time) ?? DateTimeOffset.MinValue;
        return [.. Counting().Where(dated => dated.At > from && dated.At <= time)];
    }

    /// <summary>The first result after a time, of the part that was fitted then; null when there is none.</summary>
    public DatedResult? FirstAfter(DateTimeOffset time)
    {
        DateTimeOffset until = _entries.FirstOrDefault(entry => entry.Step == CheckStep.Replaced && entry.At > time)?.At ?? DateTimeOffset.MaxValue;
        return Counting().FirstOrDefault(dated => dated.At > time && dated.At < until);
    }

    private IEnumerable<DatedResult> Counting() => Checks.Where(check => !check.IsCancelled).SelectMany(check => check.Results).OrderBy(dated => dated.At);

    private DateTimeOffset? ReplacedBefore(DateTimeOffset time) =>
        _entries.LastOrDefault(entry => entry.Step == CheckStep.Replaced && entry.At <= time)?.At;
}
