namespace BoothWatch.Service.Outputs.Series;

/// <summary>The three ways to read a history; each gives time, temperature, humidity, dew point, piece, margin, lowest film, verdict.</summary>
internal static class HistorySql
{
    private static readonly string Temperature = QualityCodes.GoodValueSql("booth_temperature_c");
    private static readonly string Humidity = QualityCodes.GoodValueSql("booth_humidity_pct");
    private static readonly string Piece = QualityCodes.GoodValueSql("piece_temperature_c");

    /// <summary>Each row as written, only usable values.</summary>
    public static readonly string Rows = $"""
        SELECT time_ms, {Temperature}, {Humidity}, dew_point_c, {Piece}, blush_margin_c, lowest_film_temperature_c, verdict
        FROM reading WHERE time_ms >= $from AND time_ms < $to AND $step = 0
        ORDER BY time_ms, id LIMIT $most
        """;

    /// <summary>Rows gathered by steps shorter than a minute.</summary>
    public static readonly string RowsByStep = $"""
        SELECT time_ms - time_ms % $step AS step_ms,
            avg({Temperature}), avg({Humidity}), avg(dew_point_c), avg({Piece}),
            min(blush_margin_c), min(lowest_film_temperature_c), min(verdict)
        FROM reading WHERE time_ms >= $from AND time_ms < $to
        GROUP BY step_ms ORDER BY step_ms LIMIT $most
        """;

    /// <summary>Minute summaries gathered by steps of whole minutes; means are weighted by the number of values.</summary>
    public static readonly string MinutesByStep = $"""
        SELECT minute_ms - minute_ms % $step AS step_ms,
            {Mean("booth_temperature_c")}, {Mean("booth_humidity_pct")}, {Mean("dew_point_c")}, {Mean("piece_temperature_c")},
            min(blush_margin_c_min), min(lowest_film_temperature_c_min), min(worst_verdict)
        FROM minute WHERE minute_ms > $from - 60000 AND minute_ms < $to
        GROUP BY step_ms ORDER BY step_ms LIMIT $most
        """;

    private static string Mean(string column) => $"sum({column}_mean * {column}_n) / nullif(sum({column}_n), 0)";
}
