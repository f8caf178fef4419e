using BoothWatch.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Jobs;

/// <summary>The columns of the journal that make the air of a coat, and how a row with their sums is read.</summary>
internal static class CoatAirColumns
{
    private static readonly string[] Names =
        ["booth_temperature_c", "booth_humidity_pct", "dew_point_c", "piece_temperature_c", "blush_margin_c"];

    /// <summary>Mean, least and most of each, from single rows, only usable values.</summary>
    public static string FromRows { get; } = string.Join(", ", Names.Select(QualityCodes.GoodValueSql).Select(v => $"avg({v}), min({v}), max({v})"));

    /// <summary>Mean, least and most of each, from minutes.</summary>
    public static string FromMinutes { get; } = string.Join(", ", Names.Select(c => $"{HistorySql.Mean(c)}, min({c}_min), max({c}_max)"));

    /// <summary>The air of a span from a row of count, worst verdict, and one of the two lists above.</summary>
    /// <param name="reader">Stands at the row.</param>
    /// <param name="at">Column of the count.</param>
    /// <param name="span">The span, for its other figures.</param>
    public static CoatAir Read(SqliteDataReader reader, int at, CoatAir span)
    {
        return span with
        {
            Count = reader.GetInt64(at),
            WorstVerdict = reader.IsDBNull(at + 1) ? null : (Verdict)reader.GetInt32(at + 1),
            TemperatureC = Of(0),
            RelativeHumidityPct = Of(1),
            DewPointC = Of(2),
            PieceTemperatureC = Of(3),
            BlushMarginC = Of(4),
        };

        AirSpan? Of(int quantity)
        {
            int mean = at + 2 + (3 * quantity);
            return reader.IsDBNull(mean) ? null : new AirSpan(reader.GetDouble(mean), reader.GetDouble(mean + 1), reader.GetDouble(mean + 2));
        }
    }
}
