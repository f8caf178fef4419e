using System.Globalization;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>Computes every hour anew from the minutes, in plain C#, and compares with the summaries and the spans still due in the file.</summary>
internal static class HourCheck
{
    private const long HourMs = 3_600_000;

    private static readonly string[] Columns =
        ["booth_temperature_c", "booth_humidity_pct", "piece_temperature_c", "dew_point_c", "blush_margin_c", "lowest_film_temperature_c"];

    /// <returns>Hours that are made, and hours with minutes that are still due.</returns>
    public static (int Made, int Due) EqualsRecomputation(SqliteConnection connection)
    {
        SortedDictionary<long, List<object?[]>> hours = MinutesByHour(connection);
        List<(long From, long To)> due = Due(connection);
        for (int i = 0; i < due.Count; i++)
        {
            Assert.Equal((0L, 0L), (Math.Abs(due[i].From % HourMs), Math.Abs(due[i].To % HourMs)));
            Assert.True(due[i].From < due[i].To && (i == 0 || due[i - 1].To <= due[i].From), "spans still due are empty or overlap");
        }

        int made = 0;
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT hour_ms, count, worst_verdict, " + Figures() + " FROM hour ORDER BY hour_ms";
        using SqliteDataReader reader = command.ExecuteReader();
        foreach ((long hour, List<object?[]> minutes) in hours)
        {
            if (due.Exists(span => span.From <= hour && hour < span.To))
            {
                continue;
            }

            made++;
            Assert.True(reader.Read(), string.Create(CultureInfo.InvariantCulture, $"hour {hour} has minutes, and is neither made nor due"));
            Assert.Equal(
                (hour, minutes.Sum(m => (long)m[1]!), minutes.Min(m => (long)m[2]!)),
                (reader.GetInt64(0), reader.GetInt64(1), reader.GetInt64(2)));
            for (int at = 3; at < 3 + (4 * Columns.Length); at += 4)
            {
                int n = at;
                object?[][] known = [.. minutes.Where(m => (long)m[n]! > 0)];
                long count = known.Sum(m => (long)m[n]!);
                Assert.Equal(count, reader.GetInt64(at));
                if (count == 0)
                {
                    Assert.True(reader.IsDBNull(at + 1) && reader.IsDBNull(at + 2) && reader.IsDBNull(at + 3));
                    continue;
                }

                double mean = known.Sum(m => (double)m[n + 1]! * (long)m[n]!) / count;
                double scale = known.Max(m => Math.Max(Math.Abs((double)m[n + 2]!), Math.Abs((double)m[n + 3]!))) + 1;
                Assert.InRange(reader.GetDouble(at + 1) - mean, -1e-12 * scale, 1e-12 * scale);
                Assert.Equal(known.Min(m => (double)m[n + 2]!), reader.GetDouble(at + 2));
                Assert.Equal(known.Max(m => (double)m[n + 3]!), reader.GetDouble(at + 3));
            }
        }

        Assert.False(reader.Read(), "there is an hour without minutes, or one that is made and due at once");
        return (made, hours.Count - made);
    }

    public static SortedDictionary<long, List<object?[]>> MinutesByHour(SqliteConnection connection)
    {
        SortedDictionary<long, List<object?[]>> hours = [];
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT minute_ms, count, worst_verdict, " + Figures() + " FROM minute ORDER BY minute_ms";
        using SqliteDataReader reader = command.ExecuteReader();
        while (reader.Read())
        {
            long hour = (long)Math.Floor(reader.GetInt64(0) / (double)HourMs) * HourMs;
            hours.TryAdd(hour, []);
            hours[hour].Add([.. Enumerable.Range(0, reader.FieldCount).Select(i => reader.IsDBNull(i) ? null : reader.GetValue(i))]);
        }

        return hours;
    }

    private static List<(long From, long To)> Due(SqliteConnection connection)
    {
        List<(long, long)> due = [];
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT from_ms, to_ms FROM hour_due ORDER BY from_ms";
        using SqliteDataReader reader = command.ExecuteReader();
        while (reader.Read())
        {
            due.Add((reader.GetInt64(0), reader.GetInt64(1)));
        }

        return due;
    }

    private static string Figures() => string.Join(", ", Columns.Select(c => $"{c}_n, {c}_mean, {c}_min, {c}_max"));
}
