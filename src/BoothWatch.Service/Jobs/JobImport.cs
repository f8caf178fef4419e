using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>A whole past job to be entered at once.</summary>
/// <param name="Details">What it is about.</param>
/// <param name="Started">When it began, UTC.</param>
/// <param name="Coats">Its coats in order of start, each with its stop.</param>
/// <param name="Finished">When it was finished, UTC; null while it runs.</param>
internal sealed record JobImport(JobDetails Details, DateTimeOffset Started, IReadOnlyList<CoatImport> Coats, DateTimeOffset? Finished);
