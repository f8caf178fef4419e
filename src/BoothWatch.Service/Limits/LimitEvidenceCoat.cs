using BoothWatch.Jobs;

namespace BoothWatch.Service.Limits;

/// <summary>A coat that counts.</summary>
/// <param name="CoatId">Number of the coat.</param>
/// <param name="JobId">Its job.</param>
/// <param name="Start">When it began, UTC.</param>
/// <param name="MarginC">Its own blush margin then, °C.</param>
/// <param name="UncertaintyC">Standard uncertainty (k = 1) of it, °C.</param>
/// <param name="Outcome">How it came out.</param>
public sealed record LimitEvidenceCoat(long CoatId, long JobId, DateTimeOffset Start, double MarginC, double UncertaintyC, CoatOutcome Outcome)
{
    /// <summary>True when it blushed. Runs, orange peel and a soft film did not: the film was wet, and set without a haze.</summary>
    public bool Blushed => Outcome == CoatOutcome.Blushed;
}
