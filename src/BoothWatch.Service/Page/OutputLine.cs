namespace BoothWatch.Service.Page;

/// <summary>How one output fares.</summary>
/// <param name="Name">Its name, for example <c>series</c>.</param>
/// <param name="Working">False while it fails or falls behind.</param>
/// <param name="Detail">In words, for example <c>12 assessments dropped, last error: disk full</c>.</param>
public sealed record OutputLine(string Name, bool Working, string Detail);
