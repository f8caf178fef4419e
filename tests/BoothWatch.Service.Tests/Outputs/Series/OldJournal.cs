using System.Globalization;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>A journal as the program wrote it before there were hours, filled with minutes that wander.</summary>
internal static class OldJournal
{
    /// <param name="folder">Where.</param>
    /// <param name="from">The first minute.</param>
    /// <param name="minutes">How many.</param>
    /// <param name="everyMinutes">One in so many.</param>
    public static void Create(JournalFolder folder, DateTimeOffset from, int minutes, int everyMinutes = 1)
    {
        using SqliteConnection connection = folder.Look();
        JournalFolder.Ask<object?>(connection, "PRAGMA journal_mode = WAL");
        JournalSchema.Migrate(connection, [.. JournalSchema.Steps.Take(HourSchema.FirstVersion - 1)]);
        Fill(connection, from, minutes, everyMinutes);
    }

    public static void Fill(SqliteConnection connection, DateTimeOffset from, int minutes, int everyMinutes = 1)
    {
        // Every seventh minute has no margin, and the values of a minute number 1 to 60.
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = string.Create(CultureInfo.InvariantCulture, $"""
            WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < {minutes - 1})
            INSERT INTO minute
            SELECT {from.ToUnixTimeMilliseconds()} + i * {everyMinutes} * 60000, 1 + i % 60, i * i % 3,
                1 + i % 60, 20 + sin(i), 19.5 + sin(i), 20.5 + sin(i),
                1 + i % 50, 55 + 20 * sin(i * 0.01), 50 + 20 * sin(i * 0.01), 60 + 20 * sin(i * 0.01),
                1 + i % 60, 19 + sin(i), 18.5 + sin(i), 19.5 + sin(i),
                1 + i % 60, 11 + cos(i), 10.5 + cos(i), 11.5 + cos(i),
                iif(i % 7, 1 + i % 60, 0), iif(i % 7, 4 + cos(i), NULL), iif(i % 7, 3 + cos(i), NULL), iif(i % 7, 5 + cos(i), NULL),
                1 + i % 60, 12 + sin(i), 11 + sin(i), 13 + sin(i)
            FROM n
            """);
        command.ExecuteNonQuery();
    }
}
