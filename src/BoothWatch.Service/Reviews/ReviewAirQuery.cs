using BoothWatch.Reviews;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Reviews;

/// <summary>Reads the air around a coat from the journal: its rows, in steps of 15 s, while they are kept; the rest of the day from minutes.</summary>
/// <param name="location">Where the journal lies.</param>
public sealed class ReviewAirQuery(JournalLocation location)
{
    /// <summary>Rows are gathered by so much: a film chills within a minute.</summary>
    private const long StepMs = 15_000;

    /// <summary>Rows are read from so long before the landing.</summary>
    private static readonly TimeSpan RowsBefore = TimeSpan.FromMinutes(1);

    private static readonly string FromMinutes = $"""
        SELECT minute_ms, booth_temperature_c_mean, dew_point_c_mean, piece_temperature_c_mean, worst_verdict
        FROM minute WHERE minute_ms > $from - {ReadingStatements.MinuteMs} AND minute_ms < $to AND booth_temperature_c_n > 0 AND dew_point_c_n > 0
        """;

    private static readonly string FromRows = $"""
        SELECT $from + ((time_ms - $from) / {StepMs}) * {StepMs} AS step_ms,
            avg({QualityCodes.GoodValueSql("booth_temperature_c")}) AS temperature, avg(dew_point_c) AS dew_point,
            avg({QualityCodes.GoodValueSql("piece_temperature_c")}), min(verdict), count(*)
        FROM reading WHERE time_ms >= $from AND time_ms < $to
        GROUP BY step_ms
        """;

    /// <summary>The recorded air of a span. Stretches without good temperature and humidity have none.</summary>
    /// <param name="from">Start, UTC.</param>
    /// <param name="to">End, UTC.</param>
    /// <param name="landing">When the coat landed, UTC: from shortly before, rows are read.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public RecordedAir Of(DateTimeOffset from, DateTimeOffset to, DateTimeOffset landing) => JournalFile.Read(location, new RecordedAir([]), connection =>
    {
        long rowsFromMs = (landing - RowsBefore).ToUnixTimeMilliseconds();
        long rowsToMs = (landing + CoatReviewer.After).ToUnixTimeMilliseconds();
        List<AirMoment> rows = Rows(connection, rowsFromMs, rowsToMs, out long count);
        if (count == 0 || count < WholeMinutes(connection, rowsFromMs, rowsToMs))
        {
            rows.Clear();
        }

        List<AirMoment> moments = Minutes(connection, from, to);
        return new RecordedAir(rows.Count == 0
            ? moments
            : moments.Select(minute => Outside(minute, rows[0].Time, rows[^1].End)).OfType<AirMoment>().Concat(rows));
    });

    /// <summary>What tells whether the air of a span has grown: its minutes and the assessments in them.</summary>
    /// <param name="from">Start, UTC.</param>
    /// <param name="to">End, UTC.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public (long Minutes, long Assessments) Extent(DateTimeOffset from, DateTimeOffset to) => JournalFile.Read(location, (0L, 0L), connection =>
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = $"SELECT count(*), ifnull(sum(count), 0) FROM minute WHERE minute_ms > $from - {ReadingStatements.MinuteMs} AND minute_ms < $to";
        Bound(command, from.ToUnixTimeMilliseconds(), to.ToUnixTimeMilliseconds());
        using SqliteDataReader reader = command.ExecuteReader();
        reader.Read();
        return (reader.GetInt64(0), reader.GetInt64(1));
    });

    private static List<AirMoment> Minutes(SqliteConnection connection, DateTimeOffset from, DateTimeOffset to)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = FromMinutes;
        Bound(command, from.ToUnixTimeMilliseconds(), to.ToUnixTimeMilliseconds());
        using SqliteDataReader reader = command.ExecuteReader();
        List<AirMoment> moments = [];
        while (reader.Read())
        {
            moments.Add(Moment(reader, ReadingStatements.MinuteMs));
        }

        return moments;
    }

    private static List<AirMoment> Rows(SqliteConnection connection, long fromMs, long toMs, out long count)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = FromRows;
        Bound(command, fromMs, toMs);
        using SqliteDataReader reader = command.ExecuteReader();
        List<AirMoment> moments = [];
        count = 0;
        while (reader.Read())
        {
            count += reader.GetInt64(5);
            if (!reader.IsDBNull(1) && !reader.IsDBNull(2))
            {
                moments.Add(Moment(reader, StepMs));
            }
        }

        return moments;
    }

    private static AirMoment Moment(SqliteDataReader reader, long lengthMs) => new(
        DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(0)),
        TimeSpan.FromMilliseconds(lengthMs),
        reader.GetDouble(1),
        reader.GetDouble(2),
        reader.IsDBNull(3) ? null : reader.GetDouble(3),
        reader.IsDBNull(4) ? null : (Verdict)reader.GetInt32(4));

    // Where rows tell the same, a minute gives way; one that begins before them keeps that part.
    private static AirMoment? Outside(AirMoment minute, DateTimeOffset rowsFrom, DateTimeOffset rowsEnd) =>
        minute.End <= rowsFrom || minute.Time >= rowsEnd ? minute
        : minute.Time < rowsFrom ? minute with { Length = rowsFrom - minute.Time }
        : null;

    private static long WholeMinutes(SqliteConnection connection, long fromMs, long toMs)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = $"SELECT ifnull(sum(count), 0) FROM minute WHERE minute_ms >= $from AND minute_ms <= $to - {ReadingStatements.MinuteMs}";
        Bound(command, fromMs, toMs);
        return (long)command.ExecuteScalar()!;
    }

    private static void Bound(SqliteCommand command, long fromMs, long toMs)
    {
        command.Parameters.AddWithValue("$from", fromMs);
        command.Parameters.AddWithValue("$to", toMs);
    }
}
