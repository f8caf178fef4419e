namespace BoothWatch.Service.Outputs.Influx;

/// <summary>A row to ship.</summary>
/// <param name="Id">Its number in its table; rises, without gaps.</param>
/// <param name="Time">Its time, UTC, to the millisecond.</param>
/// <param name="Values">Its fields: numbers as <see cref="long"/> or <see cref="double"/>, and text.</param>
public sealed record FeedRow(long Id, DateTimeOffset Time, IReadOnlyList<KeyValuePair<string, object>> Values);
