namespace BoothWatch.Service.Outputs.Series;

/// <summary>A row of the journal on its way elsewhere.</summary>
/// <param name="Id">Its number in its table; rises with insertion.</param>
/// <param name="Time">Its time, UTC, to the millisecond.</param>
/// <param name="Values">
/// What stands in it, by column name; empty columns are left out. A measured value whose quality was not good carries the
/// ending <see cref="ShippingCursor.Doubtful"/> in its name, so that nobody takes it for the air.
/// </param>
public sealed record JournalRow(long Id, DateTimeOffset Time, IReadOnlyList<KeyValuePair<string, object>> Values);
