using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>Reads the journal for the page, over connections of its own that never hold up the writer. Safe for several threads.</summary>
/// <param name="location">Where the journal lies. A journal not yet written reads as empty.</param>
public sealed class SeriesQuery(JournalLocation location)
{
    /// <summary>Points returned when the caller names no number.</summary>
    public const int DefaultPoints = 1500;

    /// <summary>Fewest points a caller may ask for.</summary>
    public const int FewestPoints = 2;

    /// <summary>Most points a caller may ask for.</summary>
    public const int MostPoints = 12_000;

    // What one answer may be gathered from, minutes or rows: what a small machine reads in a fraction of a second.
    private const long MostMinutes = 15 * 24 * 60;
    private const long MostRows = 8 * 60 * 60;

    private static readonly int[] StepsS =
        [2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400, 604_800];

    /// <summary>
    /// The history of a span: the rows as written while they are few, else by steps of seconds; from the minute
    /// summaries where these give at least a quarter of the points, where rows are too many (a day of them) or have been cleared away; from the hour
    /// summaries where a point stands for an hour or more, as it always does in a span of more than fifteen days.
    /// </summary>
    /// <param name="from">Start, included.</param>
    /// <param name="to">End, not included.</param>
    /// <param name="maxPoints">Most points to return, <see cref="FewestPoints"/> to <see cref="MostPoints"/>.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public SeriesHistory History(DateTimeOffset from, DateTimeOffset to, int maxPoints = DefaultPoints)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(maxPoints, FewestPoints);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(maxPoints, MostPoints);
        (long fromMs, long toMs) = (from.ToUnixTimeMilliseconds(), to.ToUnixTimeMilliseconds());
        if (toMs <= fromMs)
        {
            return new SeriesHistory(from, to, null, []);
        }

        return Read(new SeriesHistory(from, to, null, []), connection =>
        {
            bool hasHours = JournalSchema.VersionOf(connection) >= HourSchema.FirstVersion;
            bool AllRowsAreKept(long rows) => rows >= RowsSummarised(connection, fromMs, toMs, hasHours);
            long minutes = (toMs - fromMs) / ReadingStatements.MinuteMs;
            if (minutes <= MostMinutes && CountUpTo(connection, fromMs, toMs, maxPoints + 1) is var rows && rows <= maxPoints && AllRowsAreKept(rows))
            {
                return new SeriesHistory(from, to, null, Points(connection, HistorySql.Rows, fromMs, toMs, 0, maxPoints));
            }

            long stepMs = StepMs(toMs - fromMs, maxPoints);
            bool byRows = minutes < maxPoints / 4 && stepMs < ReadingStatements.MinuteMs
                && CountUpTo(connection, fromMs, toMs, MostRows + 1) is var kept && kept <= MostRows && AllRowsAreKept(kept);
            if (!byRows)
            {
                stepMs = Math.Max(stepMs, minutes > MostMinutes ? HourStatements.HourMs : ReadingStatements.MinuteMs);
                fromMs = ReadingStatements.MinuteOf(fromMs);
            }

            string sql = byRows ? HistorySql.RowsByStep
                : hasHours && stepMs % HourStatements.HourMs == 0 ? HistorySql.HoursByStep
                : HistorySql.MinutesByStep;
            return new SeriesHistory(from, to, TimeSpan.FromMilliseconds(stepMs), Points(connection, sql, fromMs, toMs, stepMs, maxPoints));
        });
    }

    /// <summary>The verdict changes of a span in order of time, the newest when there are more than <paramref name="most"/>.</summary>
    /// <param name="from">Start, included.</param>
    /// <param name="to">End, not included.</param>
    /// <param name="most">Most changes to return.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public IReadOnlyList<VerdictChange> VerdictChanges(DateTimeOffset from, DateTimeOffset to, int most = 1000) =>
        Read<IReadOnlyList<VerdictChange>>([], connection =>
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = """
                SELECT id, time_ms, from_verdict, to_verdict, reasons FROM verdict_change
                WHERE time_ms >= $from AND time_ms < $to ORDER BY time_ms DESC, id DESC LIMIT $most
                """;
            command.Parameters.AddWithValue("$from", from.ToUnixTimeMilliseconds());
            command.Parameters.AddWithValue("$to", to.ToUnixTimeMilliseconds());
            command.Parameters.AddWithValue("$most", most);
            List<VerdictChange> changes = ChangesOf(command);
            changes.Reverse();
            return changes;
        });

    /// <summary>The verdict changes from an id upwards, in order of id.</summary>
    /// <param name="firstId">Lowest id wanted.</param>
    /// <param name="most">Most changes to return.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public IReadOnlyList<VerdictChange> VerdictChangesFrom(long firstId, int most) =>
        Read<IReadOnlyList<VerdictChange>>([], connection =>
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "SELECT id, time_ms, from_verdict, to_verdict, reasons FROM verdict_change WHERE id >= $first ORDER BY id LIMIT $most";
            command.Parameters.AddWithValue("$first", firstId);
            command.Parameters.AddWithValue("$most", most);
            return ChangesOf(command);
        });

    /// <summary>How many verdict changes have a higher id and are not older than a time, and the time of the oldest of them.</summary>
    /// <param name="lastId">The id before them.</param>
    /// <param name="from">Only changes from then on.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public (int Count, DateTimeOffset? Oldest) VerdictChangesAfter(long lastId, DateTimeOffset from) =>
        Read<(int, DateTimeOffset?)>((0, null), connection =>
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "SELECT count(*), min(time_ms) FROM verdict_change WHERE id > $last AND time_ms >= $from";
            command.Parameters.AddWithValue("$last", lastId);
            command.Parameters.AddWithValue("$from", from.ToUnixTimeMilliseconds());
            using SqliteDataReader reader = command.ExecuteReader();
            reader.Read();
            return (reader.GetInt32(0), reader.IsDBNull(1) ? null : DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(1)));
        });

    private static List<VerdictChange> ChangesOf(SqliteCommand command)
    {
        using SqliteDataReader reader = command.ExecuteReader();
        var changes = new List<VerdictChange>();
        while (reader.Read())
        {
            changes.Add(new VerdictChange(
                reader.GetInt64(0),
                DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(1)),
                reader.IsDBNull(2) ? null : (Verdict)reader.GetInt32(2),
                (Verdict)reader.GetInt32(3),
                VerdictChangeStatements.ReasonsFrom(reader.GetString(4))));
        }

        return changes;
    }

    private static long StepMs(long spanMs, int maxPoints)
    {
        // A span rarely begins on a step, and minutes count from the one it begins in: hence a minute and two points more.
        long reachMs = spanMs + ReadingStatements.MinuteMs;
        foreach (int stepS in StepsS)
        {
            if ((reachMs / (stepS * 1000L)) + 2 <= maxPoints)
            {
                return stepS * 1000L;
            }
        }

        long weekMs = StepsS[^1] * 1000L;
        return ((reachMs / Math.Max(1, maxPoints - 2) / weekMs) + 1) * weekMs;
    }

    /// <summary>Rows that the whole minutes within a span once had; more than there are now means that some were cleared away.</summary>
    internal static long RowsSummarised(SqliteConnection connection, long fromMs, long toMs, bool hasHours)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = hasHours ? HistorySql.CountByHours : HistorySql.CountByMinutes;
        AddSpan(command, ReadingStatements.MinuteOf(fromMs + ReadingStatements.MinuteMs - 1), ReadingStatements.MinuteOf(toMs));
        return (long)command.ExecuteScalar()!;
    }

    private static void AddSpan(SqliteCommand command, long fromMs, long toMs)
    {
        (long hoursFromMs, long hoursToMs) = (HourStatements.HourOf(fromMs + HourStatements.HourMs - 1), HourStatements.HourOf(toMs));
        bool hasWholeHours = hoursFromMs < hoursToMs;
        command.Parameters.AddWithValue("$from", fromMs);
        command.Parameters.AddWithValue("$to", toMs);
        command.Parameters.AddWithValue("$hours_from", hasWholeHours ? hoursFromMs : toMs);
        command.Parameters.AddWithValue("$hours_to", hasWholeHours ? hoursToMs : toMs);
    }

    private static long CountUpTo(SqliteConnection connection, long fromMs, long toMs, long most)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM (SELECT 1 FROM reading WHERE time_ms >= $from AND time_ms < $to LIMIT $most)";
        command.Parameters.AddWithValue("$from", fromMs);
        command.Parameters.AddWithValue("$to", toMs);
        command.Parameters.AddWithValue("$most", most);
        return (long)command.ExecuteScalar()!;
    }

    private static List<SeriesPoint> Points(SqliteConnection connection, string sql, long fromMs, long toMs, long stepMs, int most)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        AddSpan(command, fromMs, toMs);
        command.Parameters.AddWithValue("$step", stepMs);
        command.Parameters.AddWithValue("$most", most);
        using SqliteDataReader reader = command.ExecuteReader();
        var points = new List<SeriesPoint>();
        while (reader.Read())
        {
            double? Value(int column) => reader.IsDBNull(column) ? null : reader.GetDouble(column);
            points.Add(new SeriesPoint(
                DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(0)),
                Value(1), Value(2), Value(5), Value(6), Value(7), Value(8), (Verdict)reader.GetInt32(9))
            {
                LeastRelativeHumidityPct = Value(3),
                MostRelativeHumidityPct = Value(4),
            });
        }

        return points;
    }

    private T Read<T>(T empty, Func<SqliteConnection, T> query) => JournalFile.Read(location, empty, query);
}
