using BoothWatch.Readings;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>Writes one assessment: its row, and its part in the summary of its minute, within the same transaction.</summary>
/// <remarks>
/// Because both commit together, a minute is right after a crash, a gap or a clock that stepped back, without any
/// recomputation at start. Means are updated by mean += (x - mean) / n.
/// </remarks>
internal static class ReadingStatements
{
    /// <summary>Length of a summary.</summary>
    public const long MinuteMs = 60_000;

    /// <summary>Columns of <c>reading</c> that minutes summarise as n, mean, min and max.</summary>
    public static readonly IReadOnlyList<string> Summarised =
    [
        "booth_temperature_c",
        "booth_humidity_pct",
        "piece_temperature_c",
        "dew_point_c",
        "blush_margin_c",
        "lowest_film_temperature_c",
    ];

    private static readonly string[] Derived =
    [
        "dew_point_c",
        "critical_humidity_pct",
        "blush_margin_c",
        "margin_uncertainty_c",
        "lowest_film_temperature_c",
        "retarder_recommended_pct",
    ];

    private static readonly string[] Columns =
        ["time_ms", "clock_proven", "verdict", "quality", .. QualityCodes.Quantities.Select(q => q.Column), .. Derived];

    private static readonly string InsertReading =
        $"INSERT INTO reading ({string.Join(", ", Columns)}) VALUES ({string.Join(", ", Columns.Select(c => "$" + c))})";

    private static readonly string UpsertMinute = $"""
        INSERT INTO minute (minute_ms, count, worst_verdict, {string.Join(", ", Summarised.Select(c => $"{c}_n, {c}_mean, {c}_min, {c}_max"))})
        VALUES ($minute_ms, 1, $verdict, {string.Join(", ", Summarised.Select(c => $"${c} IS NOT NULL, ${c}, ${c}, ${c}"))})
        ON CONFLICT (minute_ms) DO UPDATE SET
            count = count + 1,
            worst_verdict = min(worst_verdict, excluded.worst_verdict),
            {string.Join(",\n    ", Summarised.Select(c => $"""
                {c}_n = {c}_n + excluded.{c}_n,
                {c}_mean = CASE WHEN excluded.{c}_n = 0 THEN {c}_mean
                    ELSE ifnull({c}_mean, 0) + (excluded.{c}_mean - ifnull({c}_mean, 0)) / ({c}_n + 1) END,
                {c}_min = min(ifnull({c}_min, excluded.{c}_min), ifnull(excluded.{c}_min, {c}_min)),
                {c}_max = max(ifnull({c}_max, excluded.{c}_max), ifnull(excluded.{c}_max, {c}_max))
            """))}
        """;

    /// <summary>Inserts the row and adds it to its minute.</summary>
    public static void Insert(SqliteConnection connection, Assessment assessment)
    {
        long timeMs = assessment.Time.ToUnixTimeMilliseconds();
        BoothSnapshot snapshot = assessment.Snapshot;
        using SqliteCommand row = connection.CreateCommand();
        row.CommandText = InsertReading;
        row.Parameters.AddWithValue("$time_ms", timeMs);
        row.Parameters.AddWithValue("$clock_proven", snapshot.ClockProven ? 1 : 0);
        row.Parameters.AddWithValue("$verdict", (int)assessment.Verdict);
        row.Parameters.AddWithValue("$quality", QualityCodes.Of(snapshot));
        foreach ((Quantity quantity, string column) in QualityCodes.Quantities)
        {
            Add(row, column, snapshot[quantity].Value);
        }

        foreach (string column in Derived)
        {
            Add(row, column, DerivedValue(assessment, column));
        }

        row.ExecuteNonQuery();
        AddToMinute(connection, assessment);
    }

    /// <summary>Adds an assessment to its minute, without a row of its own.</summary>
    public static void AddToMinute(SqliteConnection connection, Assessment assessment)
    {
        using SqliteCommand minute = connection.CreateCommand();
        minute.CommandText = UpsertMinute;
        minute.Parameters.AddWithValue("$minute_ms", MinuteOf(assessment.Time.ToUnixTimeMilliseconds()));
        minute.Parameters.AddWithValue("$verdict", (int)assessment.Verdict);
        foreach (string column in Summarised)
        {
            Add(minute, column, QualityCodes.QuantityOf(column) is { } quantity ? GoodValue(assessment.Snapshot[quantity]) : DerivedValue(assessment, column));
        }

        minute.ExecuteNonQuery();
    }

    /// <summary>Start of the minute that a time lies in, also before 1970.</summary>
    public static long MinuteOf(long timeMs) => timeMs - (((timeMs % MinuteMs) + MinuteMs) % MinuteMs);

    private static double? DerivedValue(Assessment assessment, string column) => column switch
    {
        "dew_point_c" => assessment.Air?.DewPointC,
        "critical_humidity_pct" => assessment.Film?.CriticalHumidityPct,
        "blush_margin_c" => assessment.Film?.BlushMarginC,
        "margin_uncertainty_c" => assessment.Film?.MarginUncertaintyC,
        "lowest_film_temperature_c" => assessment.Film?.LowestFilmTemperatureC,
        "retarder_recommended_pct" => assessment.Film?.RecommendedRetarderPct,
        _ => throw new ArgumentOutOfRangeException(nameof(column), column, "Nothing is worked out for this column."),
    };

    private static double? GoodValue(Reading reading) => reading.IsGood ? reading.Value : null;

    // SQLite has no NaN, and an infinity would poison a mean: both are "no value".
    private static void Add(SqliteCommand command, string column, double? value) =>
        command.Parameters.AddWithValue("$" + column, value is { } v && double.IsFinite(v) ? v : DBNull.Value);
}
