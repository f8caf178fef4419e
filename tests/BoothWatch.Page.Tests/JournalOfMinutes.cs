using BoothWatch.Service;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Page.Tests;

/// <summary>A journal in a temporary folder with minutes of a made-up air, up to now.</summary>
internal sealed class JournalOfMinutes : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-minutes-").FullName;
    private readonly JournalLocation _location;

    public JournalOfMinutes(int days)
    {
        _location = new JournalLocation(Path.Combine(_folder, JournalLocation.FileName), IsDemo: false);
        using Journal journal = new(_location, TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        journal.Write(durable: true, connection => Fill(connection, days));
    }

    /// <summary>What the page reads.</summary>
    public IHistory History => new JournalHistory(new SeriesQuery(_location));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static void Fill(SqliteConnection connection, int days)
    {
        string[] columns = ["booth_temperature_c", "booth_humidity_pct", "piece_temperature_c", "dew_point_c", "blush_margin_c", "lowest_film_temperature_c"];
        string[] means = ["20 + 3 * sin(i * 0.00436)", "55 + 20 * sin(i * 0.0021)", "19 + 3 * sin(i * 0.00436)", "11 + 5 * sin(i * 0.0021)", "4 - 5 * sin(i * 0.0021)", "12 + 3 * sin(i * 0.00436)"];
        long first = TimeProvider.System.GetUtcNow().AddDays(-days).ToUnixTimeMilliseconds() / 60_000 * 60_000;
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = $"""
            WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < {(days * 24 * 60) - 1})
            INSERT INTO minute (minute_ms, count, worst_verdict, {string.Join(", ", columns.Select(c => $"{c}_n, {c}_mean, {c}_min, {c}_max"))})
            SELECT {first} + i * 60000, 60, CASE WHEN sin(i * 0.0021) > 0.8 THEN 0 WHEN sin(i * 0.0021) > 0.5 THEN 1 ELSE 2 END,
                {string.Join(", ", means.Select(m => $"60, {m}, {m} - 0.2, {m} + 0.2"))} FROM n
            """;
        command.ExecuteNonQuery();
    }
}
