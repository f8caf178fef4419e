namespace BoothWatch.Service.Outputs.Series;

/// <summary>
/// The ways to read a history; each gives time, temperature, humidity (mean, least, most), dew point, piece, margin, lowest film, verdict.
/// </summary>
internal static class HistorySql
{
    private static readonly string Temperature = QualityCodes.GoodValueSql("booth_temperature_c");
    private static readonly string Humidity = QualityCodes.GoodValueSql("booth_humidity_pct");
    private static readonly string Piece = QualityCodes.GoodValueSql("piece_temperature_c");

    /// <summary>Each row as written, only usable values.</summary>
    public static readonly string Rows = $"""
        SELECT time_ms, {Temperature}, {Humidity}, {Humidity}, {Humidity}, dew_point_c, {Piece}, blush_margin_c, lowest_film_temperature_c, verdict
        FROM reading WHERE time_ms >= $from AND time_ms < $to AND $step = 0
        ORDER BY time_ms, id LIMIT $most
        """;

    /// <summary>Rows gathered by steps shorter than a minute.</summary>
    public static readonly string RowsByStep = $"""
        SELECT time_ms - time_ms % $step AS step_ms,
            avg({Temperature}), avg({Humidity}), min({Humidity}), max({Humidity}), avg(dew_point_c), avg({Piece}),
            min(blush_margin_c), min(lowest_film_temperature_c), min(verdict)
        FROM reading WHERE time_ms >= $from AND time_ms < $to
        GROUP BY step_ms ORDER BY step_ms LIMIT $most
        """;

    /// <summary>Minute summaries gathered by steps of whole minutes; means are weighted by the number of values.</summary>
    public static readonly string MinutesByStep = $"""
        SELECT minute_ms - minute_ms % $step AS step_ms, {Summary}
        FROM minute WHERE minute_ms >= $from AND minute_ms < $to
        GROUP BY step_ms ORDER BY step_ms LIMIT $most
        """;

    /// <summary>The same by steps of whole hours: hours as far as they are made, and minutes for the rest and for both ends of the span.</summary>
    public static readonly string HoursByStep = $"""
        SELECT at_ms - at_ms % $step AS step_ms, {Summary}
        FROM ({HoursAndMinutes(Summarised)})
        GROUP BY step_ms ORDER BY step_ms LIMIT $most
        """;

    /// <summary>How many rows the minutes of a span once had, by way of the minutes.</summary>
    public const string CountByMinutes = "SELECT ifnull(sum(count), 0) FROM minute WHERE minute_ms >= $from AND minute_ms < $to";

    /// <summary>The same, by way of the hours as far as they are made.</summary>
    public static readonly string CountByHours = $"SELECT ifnull(sum(count), 0) FROM ({HoursAndMinutes("count")})";

    private const string Summarised = """
        worst_verdict,
        booth_temperature_c_n, booth_temperature_c_mean,
        booth_humidity_pct_n, booth_humidity_pct_mean, booth_humidity_pct_min, booth_humidity_pct_max,
        dew_point_c_n, dew_point_c_mean,
        piece_temperature_c_n, piece_temperature_c_mean,
        blush_margin_c_min, lowest_film_temperature_c_min
        """;

    private static string Summary => $"""
        {Mean("booth_temperature_c")}, {Mean("booth_humidity_pct")}, min(booth_humidity_pct_min), max(booth_humidity_pct_max),
        {Mean("dew_point_c")}, {Mean("piece_temperature_c")}, min(blush_margin_c_min), min(lowest_film_temperature_c_min), min(worst_verdict)
        """;

    /// <summary>The mean of a column over summaries, weighted by the number of values.</summary>
    public static string Mean(string column) => $"sum({column}_mean * {column}_n) / nullif(sum({column}_n), 0)";

    // $hours_from and $hours_to are the whole hours within the span, and $to where there is none. An hour is made or due, never both.
    private static string HoursAndMinutes(string columns) => $"""
        SELECT hour_ms AS at_ms, {columns} FROM hour WHERE hour_ms >= $hours_from AND hour_ms < $hours_to
        UNION ALL
        SELECT minute_ms, {columns} FROM hour_due CROSS JOIN minute
            ON minute_ms >= max(from_ms, $hours_from) AND minute_ms < min(to_ms, $hours_to)
            WHERE from_ms < $hours_to AND to_ms > $hours_from
        UNION ALL
        SELECT minute_ms, {columns} FROM minute WHERE minute_ms >= $from AND minute_ms < $hours_from
        UNION ALL
        SELECT minute_ms, {columns} FROM minute WHERE minute_ms >= $hours_to AND minute_ms < $to
        """;
}
