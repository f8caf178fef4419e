using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>A coat of a past job.</summary>
/// <param name="Details">What it was, with its stop.</param>
/// <param name="Moment">The air it was begun in.</param>
/// <param name="Outcome">How it came out; null: nobody said.</param>
/// <param name="Note">What was said of it.</param>
internal sealed record CoatImport(CoatDetails Details, CoatMoment? Moment, CoatOutcome? Outcome, string Note);
