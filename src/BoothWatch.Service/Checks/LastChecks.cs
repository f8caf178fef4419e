using System.Globalization;
using BoothWatch.Checks;
using BoothWatch.Records;
using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service.Checks;

/// <summary>What the record of a job says of the checks of a sensor: the last one before its first coat, and the first one after it.</summary>
/// <param name="store">The checks in the journal.</param>
/// <param name="time">The shop's time zone.</param>
internal sealed class LastChecks(CheckStore store, TimeProvider time)
{
    /// <summary>The check of a sensor as of a time; null when none is on record.</summary>
    /// <param name="sensor">Its configured name.</param>
    /// <param name="coat">When the first coat was begun.</param>
    /// <exception cref="JournalException">The journal cannot be read.</exception>
    public SensorCheck? Of(string sensor, DateTimeOffset coat)
    {
        CheckHistory history = new(store.All().Where(entry => entry.Sensor == sensor));
        IReadOnlyList<DatedResult> before = CheckWords.Latest(history.ResultsAsOf(coat));
        DatedResult? after = history.FirstAfter(coat);
        return (before, after) switch
        {
            ([], null) => null,
            ([], _) => new SensorCheck(after.At, $"made after the first coat: {CheckWords.Finding(after.Result)}"),
            (_, null) => new SensorCheck(before[^1].At, CheckWords.Finding(before)),
            _ => new SensorCheck(before[^1].At, $"{CheckWords.Finding(before)}; after the first coat, on {Day(after.At)}: {CheckWords.Finding(after.Result)}"),
        };
    }

    private string Day(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, time.LocalTimeZone).ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
