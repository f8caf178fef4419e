using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Benchmarks.Series;

/// <summary>
/// Journals one day at one assessment a second, every column filled with a value that needs all its digits, and measures
/// what it costs: bytes a row and a day, time a row, time of the page's queries. docs/journal.md quotes the figures.
/// </summary>
internal static class JournalDay
{
    private const int SecondsADay = 86_400;

    private static readonly DateTimeOffset Start = new(2026, 9, 7, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes the day and prints the figures.</summary>
    public static async Task<int> RunAsync(TextWriter output)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-day-");
        try
        {
            var location = new JournalLocation(Path.Combine(folder.FullName, JournalLocation.FileName), IsDemo: false);
            double[] writesMs = await WriteAsync(location);
            Array.Sort(writesMs);
            await SayAsync(output, $"write of one assessment: median {writesMs[SecondsADay / 2]:0.000} ms, 99 % {writesMs[SecondsADay * 99 / 100]:0.000} ms, longest {writesMs[^1]:0.0} ms");
            await SayAsync(output, $"log written an assessment: {LogBytesAnAssessment(folder) / 1024.0:0.0} KiB");
            await SayAsync(output, $"file after a day: {new FileInfo(location.Path).Length / 1e6:0.0} MB");
            var query = new SeriesQuery(location);
            foreach (double hours in (double[])[0.25, 1, 8, 24])
            {
                query.History(Start, Start.AddHours(hours));
                long began = Stopwatch.GetTimestamp();
                SeriesHistory history = query.History(Start, Start.AddHours(hours));
                await SayAsync(output, $"history of {hours} h: {Stopwatch.GetElapsedTime(began).TotalMilliseconds:0.0} ms, {history.Points.Count} points, step {history.Step?.TotalSeconds ?? 1} s");
            }

            foreach ((string name, long bytes, long rows) in Sizes(location))
            {
                await SayAsync(output, $"{name}: {bytes / 1e6:0.00} MB, {(double)bytes / rows:0.0} bytes a row, {rows} rows");
            }

            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<double[]> WriteAsync(JournalLocation location)
    {
        using var journal = new Journal(location, TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        var output = new SeriesOutput(journal, new SeriesOptions(), TimeProvider.System);
        var random = new Random(1);
        double[] writesMs = new double[SecondsADay];
        for (int second = 0; second < SecondsADay; second++)
        {
            Assessment assessment = At(second, random);
            long began = Stopwatch.GetTimestamp();
            await output.HandleAsync(assessment, CancellationToken.None);
            writesMs[second] = Stopwatch.GetElapsedTime(began).TotalMilliseconds;
        }

        return writesMs;
    }

    // With checkpoints off the log only grows, so its size is what was written.
    private static double LogBytesAnAssessment(DirectoryInfo folder)
    {
        const int Count = 600;
        var location = new JournalLocation(Path.Combine(folder.FullName, "log.db"), IsDemo: false);
        using var journal = new Journal(location, TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        var output = new SeriesOutput(journal, new SeriesOptions(), TimeProvider.System);
        journal.Write(durable: false, connection => Ask(connection, "PRAGMA wal_autocheckpoint = 0"));
        var log = new FileInfo(location.Path + "-wal");
        long before = log.Length;
        var random = new Random(2);
        for (int second = 0; second < Count; second++)
        {
            output.HandleAsync(At(second, random), CancellationToken.None).GetAwaiter().GetResult();
        }

        log.Refresh();
        return (double)(log.Length - before) / Count;
    }

    private static List<(string Name, long Bytes, long Rows)> Sizes(JournalLocation location)
    {
        using var connection = new SqliteConnection($"Data Source={location.Path};Pooling=False");
        connection.Open();
        var sizes = new List<(string, long, long)>();
        long before = Pages(connection);
        foreach ((string name, string drop) in ((string, string)[])
            [("index of reading", "DROP INDEX reading_time"), ("reading", "DROP TABLE reading"), ("hour", "DROP TABLE hour"), ("minute", "DROP TABLE minute")])
        {
            long rows = Ask(connection, $"SELECT count(*) FROM {(name is "minute" or "hour" ? name : "reading")}");
            Ask(connection, drop);
            Ask(connection, "VACUUM");
            long after = Pages(connection);
            sizes.Add((name, before - after, rows));
            before = after;
            if (name == "reading")
            {
                Ask(connection, "CREATE TABLE reading (id)");
                before = Pages(connection);
            }
        }

        return sizes;
    }

    private static long Pages(SqliteConnection connection) =>
        Ask(connection, "PRAGMA page_count") * Ask(connection, "PRAGMA page_size");

    private static long Ask(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar() is long value ? value : 0;
    }

    private static Task SayAsync(TextWriter output, FormattableString text) =>
        output.WriteLineAsync(text.ToString(CultureInfo.InvariantCulture));

    private static Assessment At(int second, Random random)
    {
        DateTimeOffset time = Start.AddSeconds(second).AddMilliseconds(random.Next(20));
        double temperatureC = 21 + random.NextDouble();
        double humidityPct = 55 + random.NextDouble();
        double pieceC = 20 + random.NextDouble();
        double pressurePa = 101_000 + random.NextDouble();
        (Quantity Quantity, double Value)[] values =
        [
            (Quantity.BoothTemperature, temperatureC),
            (Quantity.BoothHumidity, humidityPct),
            (Quantity.IntakeTemperature, 18 + random.NextDouble()),
            (Quantity.IntakeHumidity, 60 + random.NextDouble()),
            (Quantity.StationPressure, pressurePa),
            (Quantity.PieceTemperature, pieceC),
            (Quantity.ExhaustProof, 1),
            (Quantity.FilterPressureDrop, 40 + random.NextDouble()),
        ];
        return new Assessment
        {
            Time = time,
            Snapshot = new BoothSnapshot(time, true, values.ToImmutableDictionary(
                v => v.Quantity,
                v => new Reading(v.Quantity, "bench", v.Value, 0.1, TimeSpan.Zero, ReadingQuality.Good, null))),
            Air = new AirFindings(temperatureC, humidityPct, pressurePa, 12 + random.NextDouble(), 0.4, 0.0086, pieceC),
            Film = new FilmFindings
            {
                Coat = "clear",
                Mix = "one part lacquer to one part thinner",
                CupMl = 400,
                LoadedRetarderPct = 5,
                RetarderPct = 5,
                TimeToSetS = 96,
                LowestFilmTemperatureC = 14 + random.NextDouble(),
                WaterAtSetGPerM2 = 0,
                CriticalHumidityPct = 78 + random.NextDouble(),
                CriticalDewPointC = 18,
                BlushMarginC = 6 + random.NextDouble(),
                MarginUncertaintyC = 0.5 + random.NextDouble(),
                RecommendedRetarderPct = 5,
                MarginAtHighestRetarderC = 9,
                SolventTrappingRisk = false,
            },
            Verdict = second / 1800 % 3 == 0 ? Verdict.SlowDown : Verdict.Spray,
            Reasons = [new Reason("blush-margin", Verdict.Spray, "margin 6.1 °C", "none needed")],
        };
    }
}
