using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>
/// How far one table of the journal has been shipped elsewhere. The mark lies in the journal itself, so that the two can never
/// disagree, and moves only after the receiver has acknowledged. Not safe for several threads.
/// </summary>
/// <param name="location">Where the journal lies.</param>
/// <param name="journal">Its writing connection, for the mark.</param>
/// <param name="source">Table to ship, <see cref="Readings"/> or <see cref="VerdictChanges"/>.</param>
public sealed class ShippingCursor(JournalLocation location, Journal journal, string source)
{
    /// <summary>The table of one row an assessment.</summary>
    public const string Readings = "reading";

    /// <summary>The table of one row a change of the verdict.</summary>
    public const string VerdictChanges = "verdict_change";

    /// <summary>Ending of the name of a value that was measured and not good.</summary>
    public const string Doubtful = "_doubtful";

    /// <summary>The rows behind the mark, oldest first.</summary>
    /// <param name="most">Most rows to return.</param>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public IReadOnlyList<JournalRow> Read(int most) => Rows(
        $"SELECT * FROM {Table} WHERE id > ifnull((SELECT last_id FROM shipment WHERE source = $source), 0) ORDER BY id LIMIT $most", most);

    /// <summary>The newest row, shipped or not; null when there is none.</summary>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public JournalRow? Newest() => Rows($"SELECT * FROM {Table} ORDER BY id DESC LIMIT $most", 1) is [var newest] ? newest : null;

    /// <summary>How far shipping has come.</summary>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public ShippingState State() => JournalFile.Read(location, ShippingState.None, connection =>
    {
        // Numbers have no gaps but where old rows were cleared away from the front, so nothing needs counting.
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = $"""
            WITH mark AS (SELECT ifnull((SELECT last_id FROM shipment WHERE source = $source), 0) AS id)
            SELECT
                max(0, ifnull((SELECT max(id) FROM {Table}), 0)
                    - max((SELECT id FROM mark), ifnull((SELECT min(id) FROM {Table}), 1) - 1)),
                (SELECT time_ms FROM {Table} WHERE id > (SELECT id FROM mark) ORDER BY id LIMIT 1),
                ifnull((SELECT missed FROM shipment WHERE source = $source), 0),
                (SELECT count(*) FROM set_aside WHERE source = $source)
            """;
        command.Parameters.AddWithValue("$source", source);
        using SqliteDataReader reader = command.ExecuteReader();
        reader.Read();
        return new ShippingState(
            reader.GetInt64(0),
            reader.IsDBNull(1) ? null : DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(1)),
            reader.GetInt64(2),
            reader.GetInt64(3));
    }, FirstVersion);

    /// <summary>Moves the mark behind rows that the receiver has. Rows cleared from the journal before their turn are counted as missed.</summary>
    /// <param name="first">Number of the first of them.</param>
    /// <param name="last">Number of the last of them.</param>
    /// <param name="count">How many they are.</param>
    /// <exception cref="JournalException">It could not be written; the message names the file and the fix.</exception>
    public void Advance(long first, long last, int count) =>
        journal.Write(durable: false, connection => Mark(connection, first, last, count));

    /// <summary>Moves the mark behind a row that the receiver will not have, and keeps it with the reason.</summary>
    /// <param name="row">Its number.</param>
    /// <param name="now">When, UTC.</param>
    /// <param name="reason">What the receiver said.</param>
    /// <param name="point">The row as it was sent.</param>
    /// <exception cref="JournalException">It could not be written; the message names the file and the fix.</exception>
    public void SetAside(long row, DateTimeOffset now, string reason, string point) => journal.Write(durable: true, connection =>
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            INSERT INTO set_aside (source, row_id, set_aside_ms, reason, point) VALUES ($source, $row, $now, $reason, $point)
            ON CONFLICT (source, row_id) DO UPDATE SET set_aside_ms = excluded.set_aside_ms, reason = excluded.reason, point = excluded.point
            """;
        command.Parameters.AddWithValue("$source", source);
        command.Parameters.AddWithValue("$row", row);
        command.Parameters.AddWithValue("$now", now.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$reason", reason);
        command.Parameters.AddWithValue("$point", point);
        command.ExecuteNonQuery();
        Mark(connection, row, row, 1);
    });

    // The version of the journal that first had marks.
    private const int FirstVersion = 2;

    // Never a value from outside: the only part of a statement that is put together.
    private string Table => source switch
    {
        Readings => Readings,
        VerdictChanges => VerdictChanges,
        _ => throw new ArgumentException($"{source} is no table to ship."),
    };

    private IReadOnlyList<JournalRow> Rows(string sql, int most) => JournalFile.Read<IReadOnlyList<JournalRow>>(location, [], connection =>
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.Parameters.AddWithValue("$source", source);
        command.Parameters.AddWithValue("$most", most);
        using SqliteDataReader reader = command.ExecuteReader();
        var rows = new List<JournalRow>();
        while (reader.Read())
        {
            rows.Add(RowOf(reader));
        }

        return rows;
    }, FirstVersion);

    private void Mark(SqliteConnection connection, long first, long last, int count)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = """
            INSERT INTO shipment (source, last_id, shipped, missed) VALUES ($source, $last, $count, $last - $first + 1 - $count)
            ON CONFLICT (source) DO UPDATE SET
                missed = missed + ($last - last_id - $count), shipped = shipped + $count, last_id = $last
            """;
        command.Parameters.AddWithValue("$source", source);
        command.Parameters.AddWithValue("$first", first);
        command.Parameters.AddWithValue("$last", last);
        command.Parameters.AddWithValue("$count", count);
        command.ExecuteNonQuery();
    }

    private JournalRow RowOf(SqliteDataReader reader)
    {
        string? quality = source == Readings ? reader.GetString(reader.GetOrdinal("quality")) : null;
        var values = new List<KeyValuePair<string, object>>(reader.FieldCount);
        for (int column = 0; column < reader.FieldCount; column++)
        {
            string name = reader.GetName(column);
            if (name is "id" or "time_ms" || reader.IsDBNull(column))
            {
                continue;
            }

            bool doubtful = quality is not null && !QualityCodes.IsGood(quality, name);
            values.Add(new(doubtful ? name + Doubtful : name, reader.GetValue(column)));
        }

        return new JournalRow(
            reader.GetInt64(reader.GetOrdinal("id")),
            DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(reader.GetOrdinal("time_ms"))),
            values);
    }
}
