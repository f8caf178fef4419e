using System.Diagnostics;
using System.Globalization;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Jobs;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Benchmarks.Reviews;

/// <summary>
/// Fills a journal with 24 wet days, each recorded round the clock, with a coat that blushed on each and single rows on a third of them;
/// serves it, and asks for every review over a real connection. Fails when a first review, or the 95th percentile of later ones, takes
/// more processor time than its bound (that of the whole process: the wall clock of a shared machine says little, and is shown beside).
/// Run it with DOTNET_TieredCompilation=0, for so the service is built.
/// </summary>
internal static class ReviewCost
{
    private const int Days = 24;
    private const int Rounds = 5;
    private const double FirstBoundMs = 300;
    private const double LaterBoundMs = 150;

    private static readonly DateTimeOffset Begin = new(2025, 6, 2, 0, 0, 0, TimeSpan.Zero);

    public static async Task<int> RunAsync(TextWriter output)
    {
        string folder = Directory.CreateTempSubdirectory("boothwatch-reviews-").FullName;
        IConfigurationRoot configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["series:folder"] = folder,
            ["page:url"] = "http://127.0.0.1:0",
            ["logging:level"] = "error",
            ["jobs:demoPast"] = "false",
        }).Build();
        await using WebApplication app = BoothHost.Build(new ConfigurationFile(null, configuration, []));
        await app.StartAsync();
        app.Services.GetRequiredService<JobStore>().Import(Enumerable.Range(0, Days).Select(Import), EntrySource.Demo, onlyIfEmpty: true, FillAir);
        string url = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        using HttpClient http = new();
        List<(double WallMs, double CpuMs)> first = [];
        List<(double WallMs, double CpuMs)> later = [];
        for (int coat = 1; coat <= Days; coat++)
        {
            first.Add(await Ask(http, $"{url}/api/coats/{coat}/review"));
            for (int i = 0; i < Rounds; i++)
            {
                later.Add(await Ask(http, $"{url}/api/coats/{coat}/review"));
                later.Add(await Ask(http, $"{url}/coats/{coat}/review.svg?part=film"));
                later.Add(await Ask(http, $"{url}/coats/{coat}/review.svg?part=hours"));
            }
        }

        await app.StopAsync();
        Directory.Delete(folder, recursive: true);

        // The very first answer after a start warms the program up, and is shown beside.
        Print(output, "first review after a start", first[..1]);
        Print(output, "first review of a coat", first[1..]);
        Print(output, "later, and its charts", later[3..]);
        double slowest = first.Skip(1).Max(ask => ask.CpuMs);
        double high = At(later[3..], ask => ask.CpuMs, 0.95);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"slowest first review {slowest:0} ms, bound {FirstBoundMs:0} ms; 95 % of later {high:0} ms, bound {LaterBoundMs:0} ms"));
        return slowest < FirstBoundMs && high < LaterBoundMs ? 0 : 1;
    }

    private static void Print(TextWriter output, string what, List<(double WallMs, double CpuMs)> asks) => output.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{what,-28} processor: median {At(asks, ask => ask.CpuMs, 0.5):0} ms, 95 % {At(asks, ask => ask.CpuMs, 0.95):0} ms; wall: median {At(asks, ask => ask.WallMs, 0.5):0} ms, 95 % {At(asks, ask => ask.WallMs, 0.95):0} ms"));

    private static double At(List<(double WallMs, double CpuMs)> asks, Func<(double WallMs, double CpuMs), double> of, double share) =>
        asks.Select(of).Order().ElementAt((int)(share * (asks.Count - 1)));

    private static async Task<(double WallMs, double CpuMs)> Ask(HttpClient http, string address)
    {
        long start = Stopwatch.GetTimestamp();
        TimeSpan before = Environment.CpuUsage.TotalTime;
        using HttpResponseMessage answer = await http.GetAsync(address);
        await answer.Content.ReadAsByteArrayAsync();
        answer.EnsureSuccessStatusCode();
        return (Stopwatch.GetElapsedTime(start).TotalMilliseconds, (Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
    }

    private static JobImport Import(int day)
    {
        DateTimeOffset start = Begin.AddDays(day).AddHours(9.3);
        bool flash = day % 2 == 0;
        CoatDetails details = new()
        {
            Kind = flash ? CoatKind.Flash : CoatKind.Clear,
            Mix = new CoatMix("nitrocellulose lacquer", 1, "ordinary thinner", flash ? 4 : 0, "2-butoxyethanol", day % 4 * 4),
            WetFilmUm = (flash ? 40 : 75) + (day % 3 * 25),
            Substrate = "wood",
            AirSpeedMPerS = 0.5,
            Start = start,
            Stop = start.AddMinutes(6),
        };
        return new JobImport(new JobDetails($"table {day}", "satin", "touch-up"), start.AddMinutes(-20), [new CoatImport(details, null, CoatOutcome.Blushed, "")], start.AddDays(1));
    }

    // A wet day that is driest before dawn; rows once a second around the coat of every third day.
    private static void FillAir(SqliteConnection connection)
    {
        string[] columns = ["booth_temperature_c", "booth_humidity_pct", "piece_temperature_c", "dew_point_c", "blush_margin_c", "lowest_film_temperature_c"];
        string[] means = ["22 + 2 * sin(i * 0.00436)", "90", "20.5 + 2 * sin(i * 0.00436)", "20.6 + 1.5 * sin(i * 0.00436 + 1)", "-2", "17"];
        using SqliteCommand minutes = connection.CreateCommand();
        minutes.CommandText = $"""
            WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < {(Days * 1440) - 1})
            INSERT INTO minute (minute_ms, count, worst_verdict, {string.Join(", ", columns.Select(c => $"{c}_n, {c}_mean, {c}_min, {c}_max"))})
            SELECT {Begin.ToUnixTimeMilliseconds()} + i * 60000, 60, 0, {string.Join(", ", means.Select(m => $"60, {m}, {m} - 0.2, {m} + 0.2"))} FROM n
            """;
        minutes.ExecuteNonQuery();
        for (int day = 0; day < Days; day += 3)
        {
            using SqliteCommand rows = connection.CreateCommand();
            rows.CommandText = $"""
                WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 14400)
                INSERT INTO reading (time_ms, clock_proven, verdict, quality, booth_temperature_c, booth_humidity_pct, piece_temperature_c, dew_point_c)
                SELECT {Begin.AddDays(day).AddHours(8).ToUnixTimeMilliseconds()} + i * 1000, 1, 0, 'GG---G--',
                    22 + 0.5 * sin(i * 0.001), 90, 20.5 + 0.5 * sin(i * 0.001), 20.6 + sin(i * 0.001) FROM n
                """;
            rows.ExecuteNonQuery();
        }
    }
}
