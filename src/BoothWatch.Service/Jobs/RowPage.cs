namespace BoothWatch.Service.Jobs;

/// <summary>A part of a list.</summary>
/// <typeparam name="T">What is listed.</typeparam>
/// <param name="Total">Rows that match in all.</param>
/// <param name="Rows">The rows asked for.</param>
public sealed record RowPage<T>(int Total, IReadOnlyList<T> Rows);
