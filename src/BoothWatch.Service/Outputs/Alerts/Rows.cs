using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>Short ways to ask and tell the database.</summary>
internal static class Rows
{
    public static int Do(this SqliteConnection connection, string sql, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        using SqliteCommand command = Command(connection, sql, values);
        return command.ExecuteNonQuery();
    }

    public static IReadOnlyList<T> Ask<T>(this SqliteConnection connection, string sql, Func<SqliteDataReader, T> row, params ReadOnlySpan<(string Name, object? Value)> values)
    {
        using SqliteCommand command = Command(connection, sql, values);
        using SqliteDataReader reader = command.ExecuteReader();
        List<T> rows = [];
        while (reader.Read())
        {
            rows.Add(row(reader));
        }

        return rows;
    }

    public static long Ms(this DateTimeOffset time) => time.ToUnixTimeMilliseconds();

    public static DateTimeOffset Time(this SqliteDataReader reader, int column) => DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(column));

    public static DateTimeOffset? TimeOrNull(this SqliteDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.Time(column);

    public static string? TextOrNull(this SqliteDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.GetString(column);

    private static SqliteCommand Command(SqliteConnection connection, string sql, ReadOnlySpan<(string Name, object? Value)> values)
    {
        SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // every statement is a constant of this folder; values go in as parameters
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach ((string name, object? value) in values)
        {
            command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        }

        return command;
    }
}
