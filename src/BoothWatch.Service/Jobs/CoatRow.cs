using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>A coat as a list shows it.</summary>
/// <param name="Id">Number of the coat.</param>
/// <param name="JobId">The job.</param>
/// <param name="Place">Its place among the coats of the job, from 1.</param>
/// <param name="Piece">The piece.</param>
/// <param name="Kind">Kind of coat.</param>
/// <param name="Start">When it began, UTC.</param>
/// <param name="Stop">When it ended, UTC; null when not marked.</param>
/// <param name="RetarderPct">Retarder level, %.</param>
/// <param name="WetFilmUm">Wet film, µm.</param>
/// <param name="MarginC">Blush margin of this coat when it began, °C; null when not known.</param>
/// <param name="MarginUncertaintyC">Standard uncertainty (k = 1) of it, °C.</param>
/// <param name="Outcome">How it came out; null until somebody says.</param>
/// <param name="IsDemo">True for the demo's own coats.</param>
public sealed record CoatRow(
    long Id,
    long JobId,
    int Place,
    string Piece,
    CoatKind Kind,
    DateTimeOffset Start,
    DateTimeOffset? Stop,
    double RetarderPct,
    double WetFilmUm,
    double? MarginC,
    double? MarginUncertaintyC,
    CoatOutcome? Outcome,
    bool IsDemo);
