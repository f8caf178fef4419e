using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>A job in JSON.</summary>
/// <param name="Id">Number of the job.</param>
/// <param name="Piece">The piece.</param>
/// <param name="Finish">The finish.</param>
/// <param name="Schedule">Id of its schedule; null: none.</param>
/// <param name="Note">Anything else.</param>
/// <param name="Started">When it began, UTC.</param>
/// <param name="Finished">When it was finished, UTC; null while it runs.</param>
/// <param name="IsDemo">True for the demo's own jobs, which no shop ever had.</param>
/// <param name="Coats">Its coats in order of start.</param>
/// <param name="Timers">What it waits for.</param>
/// <param name="Drying">How the last coat dries; null when not known.</param>
/// <param name="Watch">The watch over the soft film; null when there is nothing to watch.</param>
/// <param name="Next">What the next coat most likely is; null when the job is finished.</param>
/// <param name="UndoEntry">The entry that an undo takes back; null when there is none.</param>
/// <param name="UndoWhat">What that is, in words.</param>
public sealed record JobAnswer(
    long Id,
    string Piece,
    string Finish,
    string? Schedule,
    string Note,
    DateTimeOffset Started,
    DateTimeOffset? Finished,
    bool IsDemo,
    IReadOnlyList<CoatAnswer> Coats,
    IReadOnlyList<TimerLine> Timers,
    DryingDelay? Drying,
    SoftFilmWatch? Watch,
    CoatDetails? Next,
    long? UndoEntry,
    string? UndoWhat);
