namespace BoothWatch.Records;

/// <summary>When and by what a record was written out. Not part of its data, so that a copy made later has the same SHA-256.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="Software">The program and its version.</param>
public sealed record RecordIssue(DateTimeOffset At, string Software);
