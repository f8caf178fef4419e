using System.Text.Json;
using System.Xml.Linq;
using BoothWatch.Air;
using BoothWatch.Jobs;
using BoothWatch.Reviews;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Reviews;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outputs;
using BoothWatch.Verdicts;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace BoothWatch.Service.Tests.Reviews;

/// <summary>Reviews over a real server and a real journal.</summary>
public sealed class ReviewApiTests
{
    private static readonly DateTimeOffset Landed = TestJob.Day.AddHours(2);

    [Fact]
    public async Task Review_OfTheDemosBlushedCoat_SaysWhyAndWhatWouldHaveHeld()
    {
        await using JobHost host = await JobHost.Start(("jobs:demoPast", "true"));
        host.Services.GetServices<IHostedService>().OfType<DemoPast>().Single().Create(CancellationToken.None);
        CoatRow blushed = Assert.Single(host.Services.GetRequiredService<JobStore>().Coats(new CoatQuery { Outcome = CoatOutcome.Blushed }).Rows);

        JsonElement answer = await host.Get($"/api/coats/{blushed.Id}/review");
        JsonElement review = answer.GetProperty("review");
        Assert.True(answer.GetProperty("isDemo").GetBoolean());
        Assert.Equal("blushes", review.GetProperty("finding").GetString());
        Assert.Contains("The air explains this blush", review.GetProperty("headline").GetString(), StringComparison.Ordinal);
        Assert.Equal(blushed.MarginC!.Value, review.GetProperty("figures").GetProperty("marginC").GetDouble(), 0.5);
        string[] kinds = [.. review.GetProperty("causes").EnumerateArray().Select(cause => cause.GetProperty("kind").GetString()!)];
        Assert.Equal(["air-too-wet", "heavy-film"], kinds);
        Assert.Equal(
            ["earlier", "retarder", "thinner-film", "warmer-piece", "later"],
            review.GetProperty("remedies").EnumerateArray().Select(remedy => remedy.GetProperty("kind").GetString()));
        Assert.Equal(4, answer.GetProperty("lines").GetArrayLength());

        // Every coat that came out clear in the demo holds in the model as well.
        foreach (CoatRow clear in host.Services.GetRequiredService<JobStore>().Coats(new CoatQuery { Outcome = CoatOutcome.Clear }).Rows)
        {
            Assert.Equal("holds", (await host.Get($"/api/coats/{clear.Id}/review")).GetProperty("review").GetProperty("finding").GetString());
        }
    }

    [Theory]
    [InlineData("film", "dark", new[] { "wet film", "dew point", "air", "haze begins", "minutes after it landed at 10:00" })]
    [InlineData("film", "light", new[] { "wet film", "dew point" })]
    [InlineData("hours", "dark", new[] { "limit of this coat", "dew point", "piece", "coat 10:00", "spray", "wait" })]
    public async Task Chart_OfAReview_IsSvgWithItsLines(string part, string theme, string[] words)
    {
        await using JobHost host = await JobHost.Start();
        Enter(host, Minutes(24, 21, 23));
        XElement svg = XDocument.Parse(await host.Text($"/coats/1/review.svg?part={part}&theme={theme}&width=720&height=340")).Root!;
        string text = string.Join("|", svg.Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value.Trim()));
        Assert.All(words, word => Assert.Contains(word, text, StringComparison.Ordinal));
        Assert.Equal(720, (int)svg.Attribute("width")!);
        Assert.DoesNotContain("NaN", svg.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Review_WithoutAir_SaysThatItIsNotKnown()
    {
        await using JobHost host = await JobHost.Start();
        Enter(host, []);
        JsonElement review = (await host.Get("/api/coats/1/review")).GetProperty("review");
        Assert.Equal("not-known", review.GetProperty("finding").GetString());
        Assert.Equal(JsonValueKind.Null, review.GetProperty("figures").ValueKind);
        Assert.Equal(200, await host.Status("/coats/1/review.svg?part=hours"));
        Assert.Equal(404, await host.Status("/api/coats/2/review"));
        Assert.Equal(404, await host.Status("/coats/2/review.svg"));
        Assert.Equal(400, await host.Status("/coats/1/review.svg?width=9"));
    }

    [Fact]
    public async Task Review_AfterACorrectionOrMoreAir_IsMadeAnew()
    {
        await using JobHost host = await JobHost.Start();
        Enter(host, Minutes(24, 23, 23));
        JobStore store = host.Services.GetRequiredService<JobStore>();
        ReviewDesk desk = host.Services.GetRequiredService<ReviewDesk>();
        CoatReview first = desk.Of(store.Find(1)!.Coats[0]);
        Assert.Same(first, desk.Of(store.Find(1)!.Coats[0]));

        await host.Post("/api/coats/1/correct", """{ "retarderPct": 10 }""");
        CoatReview corrected = desk.Of(store.Find(1)!.Coats[0]);
        Assert.True(corrected.Figures!.MarginC > first.Figures!.MarginC);
        await host.Post("/api/coats/1/outcome", """{ "outcome": "runs" }""");
        Assert.Contains("says nothing on runs", desk.Of(store.Find(1)!.Coats[0]).Headline, StringComparison.Ordinal);

        CoatReview before = desk.Of(store.Find(1)!.Coats[0]);
        host.Services.GetRequiredService<Journal>().Write(durable: true, connection => ReadingStatements.AddToMinute(connection, At(Landed.AddMinutes(200), 24, 10, 23)));
        Assert.NotSame(before, desk.Of(store.Find(1)!.Coats[0]));
    }

    [Fact]
    public async Task Air_OfRows_IsTakenWhileTheyAreKeptAndMinutesAfterwards()
    {
        await using JobHost host = await JobHost.Start();
        Journal journal = host.Services.GetRequiredService<Journal>();
        ReviewAirQuery query = host.Services.GetRequiredService<ReviewAirQuery>();
        journal.Write(durable: true, connection =>
        {
            // Ten minutes of rows, a second apart, in which the dew point rises by a degree a minute.
            for (int s = -120; s < 480; s++)
            {
                ReadingStatements.Insert(connection, At(Landed.AddSeconds(s), 24, 12 + (s / 60.0), 23));
            }
        });
        RecordedAir air = query.Of(Landed.AddHours(-1), Landed.AddHours(2), Landed);
        Assert.Equal(12 + (7 / 60.0), air.At(Landed)!.DewPointC, 0.01);
        Assert.Equal(TimeSpan.FromSeconds(15), air.At(Landed)!.Length);
        Assert.Equal(TimeSpan.FromMinutes(1), air.Moments[0].Length);
        Assert.All(air.Moments.Zip(air.Moments.Skip(1)), pair => Assert.Equal(pair.First.End, pair.Second.Time));

        journal.Write(durable: true, connection =>
        {
            using Microsoft.Data.Sqlite.SqliteCommand command = connection.CreateCommand();
            command.CommandText = $"DELETE FROM reading WHERE time_ms < {Landed.AddSeconds(100).ToUnixTimeMilliseconds()}";
            command.ExecuteNonQuery();
        });
        RecordedAir minutes = query.Of(Landed.AddHours(-1), Landed.AddHours(2), Landed);
        Assert.All(minutes.Moments, moment => Assert.Equal(TimeSpan.FromMinutes(1), moment.Length));
        Assert.Equal(10, minutes.Moments.Count);
        Assert.Equal(12.5 - (0.5 / 60), minutes.At(Landed)!.DewPointC, 0.01);
    }

    [Fact]
    public async Task Coat_MarkedByHandInTheDemo_IsReviewedAsDemo()
    {
        await using JobHost host = await JobHost.Start();
        Enter(host, []);
        Assert.True((await host.Get("/api/coats/1/review")).GetProperty("isDemo").GetBoolean());

        Job job = host.Services.GetRequiredService<JobStore>().Find(1)!;
        CoatReview review = host.Services.GetRequiredService<ReviewDesk>().Of(job.Coats[0]);
        Assert.False(ReviewAnswer.Of(job, job.Coats[0], review, inDemo: false, "", []).IsDemo);
    }

    [Fact]
    public async Task LongWork_AskedForAllAtOnce_WaitsWithoutThreads()
    {
        await using JobHost host = await JobHost.Start();
        Enter(host, Minutes(24, 21, 23));
        OneAtATime turns = host.Services.GetRequiredService<OneAtATime>();
        TaskCompletionSource begun = new();
        using ManualResetEventSlim release = new();
        Task<bool> held = Task.Run(() => turns.Do(
            () =>
            {
                begun.SetResult();
                return release.Wait(TimeSpan.FromMinutes(2));
            },
            CancellationToken.None));
        await begun.Task.WaitAsync(TimeSpan.FromSeconds(30));

        string[] addresses =
        [
            "/api/coats/1/review", "/coats/1/review.svg", "/api/jobs/1/record.pdf", "/api/jobs/1/record.csv", "/api/jobs/1/record.csv-metadata.json",
            "/api/jobs/1/record.json", "/api/what-if?temperature=24&humidity=60",
        ];
        Task<int>[] asked = [.. Enumerable.Range(0, 8 * addresses.Length).Select(i => host.Status(addresses[i % addresses.Length]))];
        using CancellationTokenSource late = new(TimeSpan.FromSeconds(60));
        while (turns.Waiting < asked.Length)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System, late.Token);
        }

        // None is answered, none is being worked on, and whoever asks for something else gets it.
        Assert.All(asked, request => Assert.False(request.IsCompleted));
        Assert.Equal(200, await host.Status("/api/jobs").WaitAsync(TimeSpan.FromSeconds(30)));
        release.Set();
        Assert.True(await held);
        Assert.All(await Task.WhenAll(asked).WaitAsync(TimeSpan.FromMinutes(2)), status => Assert.Equal(200, status));
        Assert.Equal(0, turns.Waiting);
    }

    [Fact]
    public async Task Address_OfAReview_IsInTheDescriptionOfTheApi()
    {
        await using JobHost host = await JobHost.Start();
        JsonElement paths = (await host.Get("/api/openapi.json")).GetProperty("paths");
        Assert.True(paths.TryGetProperty("/api/coats/{id}/review", out _));
        Assert.True(paths.TryGetProperty("/coats/{id}/review.svg", out _));
        Assert.Contains("review.js", await host.Text("/coats/1/review"), StringComparison.Ordinal);
    }

    /// <summary>Enters one clear coat, landed at 10:00, and minutes of air.</summary>
    private static void Enter(JobHost host, IEnumerable<Assessment> air)
    {
        CoatDetails details = TestJob.Coat(120, 126);
        host.Services.GetRequiredService<JobStore>().Import(
            [new JobImport(TestJob.Details, TestJob.Day, [new CoatImport(details, null, CoatOutcome.Blushed, "")], null)],
            EntrySource.Page,
            onlyIfEmpty: true,
            connection =>
            {
                foreach (Assessment minute in air)
                {
                    ReadingStatements.AddToMinute(connection, minute);
                }
            });
    }

    private static IEnumerable<Assessment> Minutes(double airC, double dewPointC, double pieceC) =>
        Enumerable.Range(-60, 180).Select(minute => At(Landed.AddMinutes(minute), airC, dewPointC, pieceC));

    private static Assessment At(DateTimeOffset time, double airC, double dewPointC, double pieceC)
    {
        double humidityPct = RelativeHumidity.FromDewPoint(airC, dewPointC);
        return TestAssessment.At(time, airC, humidityPct, pieceC, verdict: Verdict.SlowDown) with
        {
            Air = new AirFindings(airC, humidityPct, 101_325, dewPointC, 0.4, 0.01, pieceC),
        };
    }
}
