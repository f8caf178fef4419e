using System.Diagnostics;
using System.Globalization;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Benchmarks.Jobs;

/// <summary>
/// Fills a journal in the temporary folder with 2,500 jobs, 10,000 coats and five years of minutes (2.6 million), serves it, and asks each
/// address over a real connection. Fails when the 95th percentile of any is above the bound. The file is kept for the next run.
/// </summary>
internal static class FiveYears
{
    private const int Jobs = 2500;
    private const int CoatsEach = 4;
    private const int Minutes = 5 * 365 * 24 * 60;
    private const int LongestDays = 5 * 365;
    private const int MostPoints = 5000;
    private const double BoundMs = 150;
    private const int Rounds = 40;

    private static readonly DateTimeOffset Begin = new(2021, 1, 4, 0, 0, 0, TimeSpan.Zero);

    public static async Task<int> RunAsync(TextWriter output)
    {
        string folder = Path.Combine(Path.GetTempPath(), $"boothwatch-five-years-{JournalSchema.Version}");
        JournalLocation location = new(Path.Combine(folder, JournalLocation.DemoFileName), IsDemo: true);
        Fill(location, output);

        IConfigurationRoot configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["series:folder"] = folder,
            ["series:minuteYears"] = "10",
            ["series:rawDays"] = "3600",
            ["page:url"] = "http://127.0.0.1:0",
            ["logging:level"] = "error",
        }).Build();
        await using Microsoft.AspNetCore.Builder.WebApplication app = BoothHost.Build(new ConfigurationFile(null, configuration, []));
        await app.StartAsync();
        string url = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        using HttpClient http = new();
        double worst = 0;
        string late = "2023-06-01T00:00:00Z";
        foreach (string address in new[]
        {
            "/jobs", "/api/jobs", "/api/jobs?take=200&skip=2300", "/api/jobs?piece=table%2012", $"/api/jobs?from={late}&running=false",
            "/api/coats", "/api/coats?take=200&skip=9800", "/api/coats?outcome=blushed", "/api/coats?marginTo=0.5&piece=door",
            $"/api/coats?from={late}&to=2023-07-01T00:00:00Z", "/api/coats?outcome=known&kind=flash&marginFrom=1", "/api/jobs/1250", "/api/jobs/2500",
            "/api/jobs/2500/timers.ics", "/api/jobs/1250/entries", "/api/coats/5000",
            History(0.3, MostPoints), History(1, MostPoints), History(7), History(15, MostPoints), History(30), History(366), History(366, MostPoints), History(LongestDays), History(LongestDays, MostPoints),
        })
        {
            double[] times = new double[Rounds];
            TimeSpan processor = Environment.CpuUsage.TotalTime;
            for (int i = 0; i < Rounds; i++)
            {
                long start = Stopwatch.GetTimestamp();
                using HttpResponseMessage answer = await http.GetAsync(url + address);
                await answer.Content.ReadAsByteArrayAsync();
                answer.EnsureSuccessStatusCode();
                times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            }

            // Of the whole process, the browser's side included: a figure that a busy machine does not move.
            double processorMs = (Environment.CpuUsage.TotalTime - processor).TotalMilliseconds / Rounds;
            double first = times[0];
            Array.Sort(times);
            double high = times[(int)(0.95 * (Rounds - 1))];
            worst = Math.Max(worst, high);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{address,-62} first {first,7:0.0}  median {times[Rounds / 2],7:0.0}  95 % {high,7:0.0}  processor {processorMs,6:0.0} ms"));
        }

        await app.StopAsync();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"slowest 95th percentile {worst:0.0} ms, bound {BoundMs:0} ms"));
        return worst < BoundMs ? 0 : 1;
    }

    // Spans that end at no full hour, so that both ends come from minutes.
    private static string History(double days, int points = 500)
    {
        DateTimeOffset to = Begin.AddMinutes(Minutes - 20).AddSeconds(30);
        return string.Create(CultureInfo.InvariantCulture, $"/api/history?from={to.AddDays(-days):yyyy-MM-dd'T'HH:mm:ss'Z'}&to={to:yyyy-MM-dd'T'HH:mm:ss'Z'}&points={points}");
    }

    private static void Fill(JournalLocation location, TextWriter output)
    {
        if (File.Exists(location.Path))
        {
            return;
        }

        long start = Stopwatch.GetTimestamp();
        using Journal journal = new(location, TimeSpan.FromMinutes(10), TimeProvider.System, NullLogger<Journal>.Instance);
        JobStore store = new(journal, location);
        store.Import(Enumerable.Range(0, Jobs).Select(Import), EntrySource.Demo, onlyIfEmpty: true, FillMinutes);
        MakeHours(journal, output);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"filled in {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s, {new FileInfo(location.Path).Length / 1e6:0} MB"));
    }

    private static JobImport Import(int number)
    {
        DateTimeOffset day = Begin.AddDays(number * 5.0 * 365 / Jobs).AddHours(9);
        CoatImport[] coats = [.. Enumerable.Range(0, CoatsEach).Select(at => Coat(number, at, day.AddMinutes(30 * at)))];
        string piece = $"{(number % 3 == 0 ? "door" : "table")} {number}";
        return new JobImport(new JobDetails(piece, "satin", "touch-up"), day.AddMinutes(-20), coats, number == Jobs - 1 ? null : day.AddDays(1));
    }

    private static CoatImport Coat(int number, int at, DateTimeOffset start)
    {
        double margin = 3 + (4 * Math.Sin((number * 0.37) + at));
        CoatDetails details = new()
        {
            Kind = at % 2 == 0 ? CoatKind.Flash : CoatKind.Clear,
            Mix = new CoatMix("nitrocellulose lacquer", 1, "ordinary thinner", at % 2 == 0 ? 4 : 0, "2-butoxyethanol", number % 8),
            WetFilmUm = at % 2 == 0 ? 40 : 75,
            Substrate = "wood",
            AirSpeedMPerS = 0.5,
            Start = start,
            Stop = start.AddMinutes(6),
        };
        CoatMoment moment = new()
        {
            Time = start,
            AirTemperatureC = 21,
            RelativeHumidityPct = 60,
            PressurePa = 101325,
            DewPointC = 12.9,
            PieceTemperatureC = 20,
            Verdict = margin > 1 ? Verdict.Spray : Verdict.Wait,
            BlushMarginC = margin,
            MarginUncertaintyC = 0.9,
            RecommendedRetarderPct = 5,
        };
        return new CoatImport(details, moment, number % 4 == 3 ? null : margin < 0 ? CoatOutcome.Blushed : CoatOutcome.Clear, "");
    }

    // As the service does between writes, without the writes.
    private static void MakeHours(Journal journal, TextWriter output)
    {
        List<double> steps = [];
        for (bool more = true; more;)
        {
            long start = Stopwatch.GetTimestamp();
            journal.Write(durable: false, connection => more = HourStatements.Make(connection, long.MinValue, SeriesOutput.HoursAStep));
            steps.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        steps.Sort();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"hours made in {steps.Count} steps of {SeriesOutput.HoursAStep}: median {steps[steps.Count / 2]:0.00} ms, longest {steps[^1]:0.0} ms"));
    }

    private static void FillMinutes(SqliteConnection connection)
    {
        string[] columns = ["booth_temperature_c", "booth_humidity_pct", "piece_temperature_c", "dew_point_c", "blush_margin_c", "lowest_film_temperature_c"];
        string[] means = ["20 + 3 * sin(i * 0.00436)", "55 + 20 * sin(i * 0.00051)", "19 + 3 * sin(i * 0.00436)", "11 + 5 * sin(i * 0.00051)", "4 - 5 * sin(i * 0.00051)", "12 + 3 * sin(i * 0.00436)"];
        using SqliteCommand command = connection.CreateCommand();
        command.CommandTimeout = 0;
        command.CommandText = $"""
            WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < {Minutes - 1})
            INSERT INTO minute (minute_ms, count, worst_verdict, {string.Join(", ", columns.Select(c => $"{c}_n, {c}_mean, {c}_min, {c}_max"))})
            SELECT {Begin.ToUnixTimeMilliseconds()} + i * 60000, 60, 2, {string.Join(", ", means.Select(m => $"60, {m}, {m} - 0.2, {m} + 0.2"))} FROM n
            """;
        command.ExecuteNonQuery();

        // The last day second by second as well, for spans that are read from rows.
        command.CommandText = $"""
            WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 86399)
            INSERT INTO reading (time_ms, clock_proven, verdict, quality, {string.Join(", ", columns)})
            SELECT {Begin.AddMinutes(Minutes - (24 * 60)).ToUnixTimeMilliseconds()} + i * 1000, 1, 2, 'GGGGGGGG', {string.Join(", ", means)} FROM n
            """;
        command.ExecuteNonQuery();
    }
}
