namespace BoothWatch.Service.Page;

/// <summary>The past of the booth as columns: a week of minutes at a fifth of the length that points take. Row i of each column belongs together.</summary>
/// <param name="From">Begin, UTC.</param>
/// <param name="To">End, UTC.</param>
/// <param name="TimeS">Seconds since 1970-01-01 UTC, to 0.1 s, rising. Times without data are absent.</param>
/// <param name="TemperatureC">Air temperature, °C.</param>
/// <param name="DewPointC">Dew point, °C.</param>
/// <param name="LowestFilmTemperatureC">Lowest film temperature, °C.</param>
/// <param name="BlushMarginC">Blush margin, °C.</param>
/// <param name="Verdict">0 wait, 1 slow down, 2 spray.</param>
public sealed record HistoryColumns(
    DateTime From,
    DateTime To,
    IReadOnlyList<double> TimeS,
    IReadOnlyList<double?> TemperatureC,
    IReadOnlyList<double?> DewPointC,
    IReadOnlyList<double?> LowestFilmTemperatureC,
    IReadOnlyList<double?> BlushMarginC,
    IReadOnlyList<int?> Verdict)
{
    /// <summary>Turns points into columns, figures to 0.01 °C.</summary>
    public static HistoryColumns Of(DateTimeOffset from, DateTimeOffset to, IReadOnlyList<HistoryPoint> points) => new(
        from.UtcDateTime,
        to.UtcDateTime,
        [.. points.Select(p => Math.Round(new DateTimeOffset(p.Time, TimeSpan.Zero).ToUnixTimeMilliseconds() / 1000.0, 1))],
        [.. points.Select(p => Figure(p.TemperatureC))],
        [.. points.Select(p => Figure(p.DewPointC))],
        [.. points.Select(p => Figure(p.LowestFilmTemperatureC))],
        [.. points.Select(p => Figure(p.BlushMarginC))],
        [.. points.Select(p => (int?)p.Verdict)]);

    private static double? Figure(double? value) => value is { } known && double.IsFinite(known) ? Math.Round(known, 2) : null;
}
