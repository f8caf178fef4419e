using BoothWatch.Jobs;

namespace BoothWatch.Records;

/// <summary>A correction of what the job is about.</summary>
/// <param name="At">When it was entered, UTC.</param>
/// <param name="By">Where it was entered.</param>
/// <param name="Why">The reason, in the shop's words; may be empty.</param>
/// <param name="Details">What held from then on.</param>
public sealed record JobCorrection(DateTimeOffset At, string By, string Why, JobDetails Details);
