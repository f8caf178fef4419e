using BoothWatch.Jobs;

namespace BoothWatch.Records;

/// <summary>The job of a record.</summary>
/// <param name="Id">Number of the job.</param>
/// <param name="Started">When it began, UTC.</param>
/// <param name="Finished">When it was finished, UTC; null while it runs, and then the record may still change.</param>
/// <param name="Details">What it is about.</param>
/// <param name="Original">As first entered, where it was corrected; else null.</param>
/// <param name="Corrections">The corrections that hold, oldest first.</param>
public sealed record RecordJob(
    long Id, DateTimeOffset Started, DateTimeOffset? Finished, JobDetails Details, JobDetails? Original, IReadOnlyList<JobCorrection> Corrections);
