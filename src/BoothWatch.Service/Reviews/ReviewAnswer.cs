using BoothWatch.Jobs;
using BoothWatch.Reviews;
using BoothWatch.Service.Jobs;

namespace BoothWatch.Service.Reviews;

/// <summary>The review of a coat in JSON.</summary>
/// <param name="CoatId">Number of the coat.</param>
/// <param name="JobId">The job.</param>
/// <param name="Place">Its place among the coats of the job, from 1.</param>
/// <param name="Piece">The piece.</param>
/// <param name="IsDemo">True where no shop ever sprayed it in this air: the demo's own coats, and every coat marked in the demo.</param>
/// <param name="Details">What the coat was.</param>
/// <param name="OutcomeNote">What was said of how it came out.</param>
/// <param name="When">When it landed, for people, by the shop's clock.</param>
/// <param name="Lines">The figures for people, in the shop's unit.</param>
/// <param name="Review">The review; figures in °C.</param>
public sealed record ReviewAnswer(
    long CoatId,
    long JobId,
    int Place,
    string Piece,
    bool IsDemo,
    CoatDetails Details,
    string OutcomeNote,
    string When,
    IReadOnlyList<ReviewLine> Lines,
    CoatReview Review)
{
    /// <summary>The answer for a coat; <paramref name="inDemo"/>: it is in the journal of the demo.</summary>
    public static ReviewAnswer Of(Job job, JobCoat coat, CoatReview review, bool inDemo, string when, IReadOnlyList<ReviewLine> lines)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(coat);
        return new(
            coat.Id, job.Id, coat.Place, job.Details.Piece, inDemo || job.Entries[0].By == EntrySource.Demo, coat.Details, coat.OutcomeNote, when, lines, review);
    }
}
