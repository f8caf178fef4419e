using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>
/// Clears away what is older than the shop keeps: a small batch at a time, so that no write waits long, and gives the
/// pages back to the file system.
/// </summary>
/// <param name="rawDays">How long rows are kept, days.</param>
/// <param name="minuteYears">How long minute summaries and verdict changes are kept, years.</param>
/// <param name="unshippedDays">How long rows are kept that are to be shipped elsewhere and have not been, days.</param>
/// <param name="batch">Most rows a table and sweep.</param>
internal sealed class Retention(int rawDays, int minuteYears, int unshippedDays = 90, int batch = 600)
{
    private const int VacuumPages = 64;

    // Rows go in the order in which they were written. A row whose time was not proven goes once a later row with a
    // proven time is old enough: its own time may be decades off, so it says nothing. Once readings are shipped elsewhere,
    // those behind the mark stay longer, so that a long outage loses nothing.
    private const string DeleteReadings = """
        DELETE FROM reading WHERE id IN (
            SELECT id FROM reading
            WHERE id <= (SELECT max(id) FROM reading WHERE time_ms < $cutoff AND clock_proven = 1)
            AND (time_ms < $cutoff OR clock_proven = 0)
            AND (id <= ifnull((SELECT last_id FROM shipment WHERE source = 'reading'), id)
                OR id <= (SELECT max(id) FROM reading WHERE time_ms < $unshipped_cutoff AND clock_proven = 1))
            ORDER BY id LIMIT $batch)
        """;

    private const string DeleteMinutes =
        "DELETE FROM minute WHERE minute_ms IN (SELECT minute_ms FROM minute WHERE minute_ms < $cutoff ORDER BY minute_ms LIMIT $batch)";

    private const string DeleteChanges =
        "DELETE FROM verdict_change WHERE id IN (SELECT id FROM verdict_change WHERE time_ms < $cutoff ORDER BY time_ms LIMIT $batch)";

    /// <summary>Deletes one batch of each table and gives back some pages.</summary>
    /// <param name="connection">The writing connection, within a transaction.</param>
    /// <param name="now">Time to reckon from; only a proven one.</param>
    /// <returns>True when there may be more to clear.</returns>
    public bool Sweep(SqliteConnection connection, DateTimeOffset now)
    {
        long rawCutoff = now.AddDays(-rawDays).ToUnixTimeMilliseconds();
        long longCutoff = ReadingStatements.MinuteOf(now.AddYears(-minuteYears).ToUnixTimeMilliseconds());
        long unshippedCutoff = now.AddDays(-Math.Max(rawDays, unshippedDays)).ToUnixTimeMilliseconds();
        bool more = Delete(connection, DeleteReadings, rawCutoff, unshippedCutoff) >= batch;
        more |= Delete(connection, DeleteMinutes, longCutoff) >= batch;
        more |= Delete(connection, DeleteChanges, longCutoff) >= batch;

        // Each step of this statement frees one page; reading to the end frees all that it was asked for.
        using SqliteCommand vacuum = connection.CreateCommand();
        vacuum.CommandText = $"PRAGMA incremental_vacuum({VacuumPages})";
        using SqliteDataReader reader = vacuum.ExecuteReader();
        while (reader.Read())
        {
        }

        return more;
    }

    private int Delete(SqliteConnection connection, string sql, long cutoff, long unshippedCutoff = 0)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.Parameters.AddWithValue("$cutoff", cutoff);
        command.Parameters.AddWithValue("$unshipped_cutoff", unshippedCutoff);
        command.Parameters.AddWithValue("$batch", batch);
        return command.ExecuteNonQuery();
    }
}
