using BoothWatch.Checks;

namespace BoothWatch.Service.Checks;

/// <summary>A result.</summary>
/// <param name="At">When it was taken, UTC.</param>
/// <param name="Salt">Id of the salt.</param>
/// <param name="ReadPct">What the sensor read, %.</param>
/// <param name="ReferencePct">What the air over the salt had, %.</param>
/// <param name="DeviationPct">Read less reference, %.</param>
/// <param name="ExpandedUncertaintyPct">Expanded uncertainty (k = 2) of it.</param>
/// <param name="TolerancePct">What the part may be off, ± %.</param>
/// <param name="Outcome">The decision.</param>
/// <param name="Words">The same for people.</param>
public sealed record ChecksResult(
    DateTimeOffset At, string Salt, double ReadPct, double ReferencePct, double DeviationPct, double ExpandedUncertaintyPct, double TolerancePct, CheckOutcome Outcome, string Words);
