using System.Globalization;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>Computes every minute anew from the rows, in plain C#, and compares with the summaries in the file.</summary>
internal static class MinuteCheck
{
    // column, and its place in the quality letters (-1: no letter)
    private static readonly (string Column, int Letter)[] Columns =
    [
        ("booth_temperature_c", 0), ("booth_humidity_pct", 1), ("piece_temperature_c", 5),
        ("dew_point_c", -1), ("blush_margin_c", -1), ("lowest_film_temperature_c", -1),
    ];

    public static int EqualsRecomputation(SqliteConnection connection)
    {
        var minutes = new SortedDictionary<long, (int Count, long Worst, List<double>[] Values)>();
        using (SqliteCommand command = connection.CreateCommand())
        {
            command.CommandText = $"SELECT time_ms, verdict, quality, {string.Join(", ", Columns.Select(c => c.Column))} FROM reading";
            using SqliteDataReader reader = command.ExecuteReader();
            while (reader.Read())
            {
                long minute = (long)Math.Floor(reader.GetInt64(0) / 60_000.0) * 60_000;
                (int count, long worst, List<double>[] values) = minutes.TryGetValue(minute, out var known)
                    ? known
                    : (0, long.MaxValue, [.. Columns.Select(_ => new List<double>())]);
                for (int i = 0; i < Columns.Length; i++)
                {
                    bool good = Columns[i].Letter < 0 || reader.GetString(2)[Columns[i].Letter] == 'G';
                    if (good && !reader.IsDBNull(3 + i))
                    {
                        values[i].Add(reader.GetDouble(3 + i));
                    }
                }

                minutes[minute] = (count + 1, Math.Min(worst, reader.GetInt64(1)), values);
            }
        }

        using SqliteCommand summaries = connection.CreateCommand();
        summaries.CommandText = "SELECT minute_ms, count, worst_verdict, "
            + string.Join(", ", Columns.Select(c => $"{c.Column}_n, {c.Column}_mean, {c.Column}_min, {c.Column}_max"))
            + " FROM minute ORDER BY minute_ms";
        using SqliteDataReader summary = summaries.ExecuteReader();
        foreach ((long minute, (int count, long worst, List<double>[] values)) in minutes)
        {
            Assert.True(summary.Read(), string.Create(CultureInfo.InvariantCulture, $"minute {minute} has no summary"));
            Assert.Equal((minute, count, worst), (summary.GetInt64(0), summary.GetInt64(1), summary.GetInt64(2)));
            for (int i = 0; i < Columns.Length; i++)
            {
                int at = 3 + (4 * i);
                Assert.Equal(values[i].Count, summary.GetInt64(at));
                if (values[i].Count == 0)
                {
                    Assert.True(summary.IsDBNull(at + 1) && summary.IsDBNull(at + 2) && summary.IsDBNull(at + 3));
                    continue;
                }

                double scale = values[i].Max(Math.Abs) + 1;
                Assert.InRange(summary.GetDouble(at + 1) - values[i].Average(), -1e-12 * scale, 1e-12 * scale);
                Assert.Equal(values[i].Min(), summary.GetDouble(at + 2));
                Assert.Equal(values[i].Max(), summary.GetDouble(at + 3));
            }
        }

        Assert.False(summary.Read(), "there is a summary of a minute without rows");
        return minutes.Count;
    }
}
