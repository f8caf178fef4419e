using BoothWatch.Checks;

namespace BoothWatch.Service.Checks;

/// <summary>A check as its entries tell it.</summary>
/// <param name="Id">Number of the check.</param>
/// <param name="Sensor">Configured name of the sensor.</param>
/// <param name="Begun">When it was begun, UTC.</param>
/// <param name="Ended">When the sensor was used again, UTC; null while it runs.</param>
/// <param name="IsCancelled">True when its results do not count, or it was given up without one.</param>
/// <param name="Results">What was found.</param>
/// <param name="Part">What and where the part was, as its sensor described it; null when not known.</param>
internal sealed record PastCheck(
    long Id, string Sensor, DateTimeOffset Begun, DateTimeOffset? Ended, bool IsCancelled, IReadOnlyList<DatedResult> Results, string? Part)
{
    /// <summary>The check that entries of one check make.</summary>
    public static PastCheck Of(IReadOnlyList<CheckEntry> entries)
    {
        DatedResult[] results = [.. entries.Where(entry => entry.Fields.Result is not null).Select(entry => new DatedResult(entry.At, entry.Fields.Result!))];
        DateTimeOffset? ended = entries.FirstOrDefault(entry => entry.Step == CheckStep.Ended)?.At;
        bool wasBack = entries.Any(entry => entry.Step == CheckStep.Back);
        return new PastCheck(
            entries[0].CheckId,
            entries[0].Sensor,
            entries[0].At,
            ended,
            entries.Any(entry => entry.Fields.Cancelled == true) || (wasBack && results.Length == 0),
            results,
            entries[0].Fields.Part);
    }
}
