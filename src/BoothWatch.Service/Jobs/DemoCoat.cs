using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>An invented coat.</summary>
/// <param name="DaysAgo">On which day, counted back from today.</param>
/// <param name="At">Time of day in the shop.</param>
/// <param name="Kind">Kind of coat.</param>
/// <param name="RetarderPct">Retarder in the cup, %.</param>
/// <param name="Outcome">What the shop said of it; null: nothing.</param>
/// <param name="Note">In the shop's words.</param>
internal sealed record DemoCoat(int DaysAgo, TimeSpan At, CoatKind Kind, double RetarderPct, CoatOutcome? Outcome, string Note)
{
    /// <summary>Wet film, µm; null: the usual one of the kind.</summary>
    public double? WetFilmUm { get; init; }
}
