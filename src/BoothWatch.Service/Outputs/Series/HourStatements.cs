using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>Makes hour summaries from minutes, a bounded number of hours at a time, the newest first.</summary>
internal static class HourStatements
{
    /// <summary>Length of a summary. Hours count in UTC, so a change of the local clock makes none longer or shorter.</summary>
    public const long HourMs = 3_600_000;

    private const string NextDue = """
        SELECT from_ms, to_ms FROM hour_due WHERE NOT (from_ms = $current AND to_ms = $current + 3600000) ORDER BY from_ms DESC LIMIT 1
        """;

    private const string NewestMinute = "SELECT max(minute_ms) FROM minute WHERE minute_ms >= $from AND minute_ms < $to";

    private static readonly string MakeHours = $"""
        INSERT INTO hour (hour_ms, count, worst_verdict, {string.Join(", ", ReadingStatements.Summarised.Select(c => $"{c}_n, {c}_mean, {c}_min, {c}_max"))})
        SELECT minute_ms - ((minute_ms % {HourMs}) + {HourMs}) % {HourMs}, sum(count), min(worst_verdict),
            {string.Join(",\n    ", ReadingStatements.Summarised.Select(c => $"sum({c}_n), {HistorySql.Mean(c)}, min({c}_min), max({c}_max)"))}
        FROM minute WHERE minute_ms >= $from AND minute_ms < $to GROUP BY 1
        """;

    /// <summary>Makes what is due, but for the hour that is still being written, which would be due again at the next row.</summary>
    /// <param name="connection">The writing connection, within a transaction.</param>
    /// <param name="currentHourMs">Start of the hour that is still being written.</param>
    /// <param name="most">Most hours to make now.</param>
    /// <returns>True when more is due.</returns>
    public static bool Make(SqliteConnection connection, long currentHourMs, int most)
    {
        for (int left = most; left > 0;)
        {
            if (Next(connection, currentHourMs) is not var (dueFrom, dueTo))
            {
                return false;
            }

            // A journal may have gaps of years, which must not cost a step for each of their hours.
            long? newest = Ask(connection, NewestMinute, dueFrom, dueTo);
            long to = newest is { } minute ? HourOf(minute) + HourMs : dueFrom;
            long from = Math.Max(dueFrom, to - (left * HourMs));
            left -= Math.Max(1, Execute(connection, MakeHours, from, to));
            Execute(connection, from > dueFrom ? "UPDATE hour_due SET to_ms = $to WHERE from_ms = $from" : "DELETE FROM hour_due WHERE from_ms = $from", dueFrom, from);
        }

        return Next(connection, currentHourMs) is not null;
    }

    /// <summary>Start of the hour that a time lies in, also before 1970.</summary>
    public static long HourOf(long timeMs) => timeMs - (((timeMs % HourMs) + HourMs) % HourMs);

    private static (long FromMs, long ToMs)? Next(SqliteConnection connection, long currentHourMs)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = NextDue;
        command.Parameters.AddWithValue("$current", currentHourMs);
        using SqliteDataReader reader = command.ExecuteReader();
        return reader.Read() ? (reader.GetInt64(0), reader.GetInt64(1)) : null;
    }

    private static long? Ask(SqliteConnection connection, string sql, long from, long to)
    {
        using SqliteCommand command = Command(connection, sql, from, to);
        return command.ExecuteScalar() as long?;
    }

    private static int Execute(SqliteConnection connection, string sql, long from, long to)
    {
        using SqliteCommand command = Command(connection, sql, from, to);
        return command.ExecuteNonQuery();
    }

    private static SqliteCommand Command(SqliteConnection connection, string sql, long from, long to)
    {
        SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.Parameters.AddWithValue("$from", from);
        command.Parameters.AddWithValue("$to", to);
        return command;
    }
}
