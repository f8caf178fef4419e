using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>A coat in JSON.</summary>
/// <param name="Id">Number of the coat.</param>
/// <param name="JobId">The job.</param>
/// <param name="Place">Its place among the coats of the job, from 1.</param>
/// <param name="Piece">The piece.</param>
/// <param name="IsDemo">True for the demo's own coats, which no shop ever sprayed.</param>
/// <param name="MarkedBy">Where it was marked: page, button or demo.</param>
/// <param name="Details">What holds.</param>
/// <param name="Original">As marked, where it was corrected; else null.</param>
/// <param name="Corrections">When and why it was corrected.</param>
/// <param name="Moment">The air it was begun in, and its margin; null when not known.</param>
/// <param name="Air">The air from start to stop, as the journal has it; null in lists.</param>
/// <param name="Outcome">How it came out; null until somebody says.</param>
/// <param name="OutcomeNote">What was said of it.</param>
public sealed record CoatAnswer(
    long Id,
    long JobId,
    int Place,
    string Piece,
    bool IsDemo,
    string MarkedBy,
    CoatDetails Details,
    CoatDetails? Original,
    IReadOnlyList<CorrectionLine> Corrections,
    CoatMoment? Moment,
    CoatAir? Air,
    CoatOutcome? Outcome,
    string OutcomeNote)
{
    /// <summary>Kind of coat.</summary>
    public CoatKind Kind => Details.Kind;

    /// <summary>The answer for a coat.</summary>
    public static CoatAnswer Of(Job job, JobCoat coat, CoatAir? air)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(coat);
        return new(
            coat.Id,
            coat.JobId,
            coat.Place,
            job.Details.Piece,
            job.Entries[0].By == EntrySource.Demo,
            coat.MarkedBy,
            coat.Details,
            coat.Corrections.Count > 0 ? coat.Original : null,
            [.. coat.Corrections.Select(entry => new CorrectionLine(entry.Id, entry.At, ((CoatCorrected)entry.Change).Why))],
            coat.Moment,
            air,
            coat.Outcome,
            coat.OutcomeNote);
    }
}
