using BoothWatch.Jobs;

namespace BoothWatch.Records;

/// <summary>A correction of a coat.</summary>
/// <param name="At">When it was entered, UTC.</param>
/// <param name="By">Where it was entered.</param>
/// <param name="Why">The reason, in the shop's words; may be empty.</param>
/// <param name="Details">What held from then on.</param>
public sealed record CoatCorrection(DateTimeOffset At, string By, string Why, CoatDetails Details);
