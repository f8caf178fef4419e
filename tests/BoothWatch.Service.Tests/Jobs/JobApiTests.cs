using System.Device.Gpio;
using System.Text.Json;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Sensors;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Jobs;

/// <summary>Jobs over a real server.</summary>
public sealed class JobApiTests
{
    [Fact]
    public async Task Start_WithoutAScheduleOnPurpose_IsAJobWithoutOne()
    {
        await using JobHost host = await JobHost.Start();
        (int status, JsonElement job) = await host.Post("/api/jobs", """{ "piece": "side table", "finish": "", "schedule": null }""");
        Assert.Equal(201, status);
        Assert.Equal(JsonValueKind.Null, job.GetProperty("schedule").ValueKind);
    }

    [Fact]
    public async Task Job_FromStartToRecordableEnd_IsKept()
    {
        await using JobHost host = await JobHost.Start();
        (int status, JsonElement job) = await host.Post("/api/jobs", """{ "piece": "side table", "finish": "satin" }""");
        Assert.Equal(201, status);
        Assert.Equal("touch-up", job.GetProperty("schedule").GetString());
        Assert.Equal("flash", job.GetProperty("next").GetProperty("kind").GetString());

        (status, job) = await host.Post("/api/jobs/1/coats", "{}");
        Assert.Equal(201, status);
        JsonElement coat = job.GetProperty("coats")[0];
        Assert.Equal(4, coat.GetProperty("details").GetProperty("mix").GetProperty("thinnerParts").GetDouble());
        Assert.Equal("next-coat", job.GetProperty("timers")[0].GetProperty("kind").GetString());

        (_, job) = await host.Post("/api/coats/1/stop", "{}");
        Assert.NotEqual(JsonValueKind.Null, job.GetProperty("coats")[0].GetProperty("details").GetProperty("stop").ValueKind);
        (_, job) = await host.Post("/api/coats/1/correct", """{ "retarderPct": 7.5, "why": "read the cup again" }""");
        Assert.Equal(7.5, job.GetProperty("coats")[0].GetProperty("details").GetProperty("mix").GetProperty("retarderPct").GetDouble());
        Assert.NotEqual(7.5, job.GetProperty("coats")[0].GetProperty("original").GetProperty("mix").GetProperty("retarderPct").GetDouble());
        (_, job) = await host.Post("/api/coats/1/outcome", """{ "outcome": "dry-spray", "note": "rough" }""");
        Assert.Equal("dry-spray", job.GetProperty("coats")[0].GetProperty("outcome").GetString());
        (_, job) = await host.Post("/api/jobs/1/undo", "{}");
        Assert.Equal(JsonValueKind.Null, job.GetProperty("coats")[0].GetProperty("outcome").ValueKind);
        (_, job) = await host.Post("/api/jobs/1/finish", "{}");
        Assert.Empty(job.GetProperty("timers").EnumerateArray());

        Assert.Equal(1, (await host.Get("/api/coats?kind=flash&piece=TABLE")).GetProperty("total").GetInt32());
        Assert.Equal(0, (await host.Get("/api/coats?outcome=known")).GetProperty("total").GetInt32());
        Assert.Equal(7, (await host.Get("/api/jobs/1/entries")).GetArrayLength());
    }

    [Theory]
    [InlineData("/api/jobs", "{}", "piece", "for example")]
    [InlineData("/api/jobs", """{ "piece": "x", "schedule": "nowhere" }""", "schedule", "touch-up")]
    [InlineData("/api/jobs", """{ "piece": "x", "peice": "y" }""", "peice", "not a field")]
    [InlineData("/api/jobs", "[1", "body", "not valid JSON")]
    [InlineData("/api/jobs", "7", "body", "no object")]
    [InlineData("/api/jobs/1/coats", """{ "retarderPct": 31 }""", "retarderPct", "0 to 30")]
    [InlineData("/api/jobs/1/coats", """{ "kind": "primer" }""", "kind", "flash")]
    [InlineData("/api/jobs/1/coats", """{ "start": "yesterday" }""", "start", "RFC 3339")]
    [InlineData("/api/jobs/1/coats", """{ "start": "2999-01-01T00:00:00Z" }""", "start", "until now")]
    [InlineData("/api/jobs/1/coats", """{ "lacquer": "varnish" }""", "lacquer", "nitrocellulose lacquer")]
    [InlineData("/api/coats/1/outcome", "{}", "outcome", "orange-peel")]
    public async Task Body_WithAWrongField_IsRefusedByName(string address, string json, string field, string says)
    {
        await using JobHost host = await JobHost.Start();
        await host.Post("/api/jobs", """{ "piece": "side table" }""");
        await host.Post("/api/jobs/1/coats", "{}");
        (int status, JsonElement problem) = await host.Post(address, json);
        Assert.Equal(400, status);
        Assert.Equal(field, problem.GetProperty("fields")[0].GetString());
        Assert.Contains(says, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Change_NotFittingOrNotFound_SaysSo()
    {
        await using JobHost host = await JobHost.Start();
        Assert.Equal(404, await host.Status("/api/jobs/9"));
        Assert.Equal(404, await host.Status("/api/coats/9"));
        Assert.Equal(400, await host.Status("/api/coats?take=500"));
        Assert.Equal(400, await host.Status("/api/coats?outcome=odd"));
        await host.Post("/api/jobs", """{ "piece": "side table" }""");
        Assert.Equal(409, (await host.Post("/api/jobs/1/undo", "{}")).Status);
        await host.Post("/api/jobs/1/finish", "{}");
        Assert.Equal(409, (await host.Post("/api/jobs/1/coats", "{}")).Status);
    }

    [Fact]
    public async Task Change_NotFromTheOwnPage_IsRefused()
    {
        await using JobHost host = await JobHost.Start();
        const string body = """{ "piece": "side table" }""";
        Assert.Equal(415, (await host.Post("/api/jobs", body, "text/plain")).Status);
        Assert.Equal(403, (await host.Post("/api/jobs", body, change: request => request.Headers.Host = "booth.example")).Status);
        Assert.Equal(403, (await host.Post("/api/jobs", body, change: request => request.Headers.Add("Origin", "http://elsewhere.example"))).Status);
        Assert.Equal(401, (await host.Post("/api/jobs", body, change: request => request.Headers.Add("X-Forwarded-For", "192.0.2.7"))).Status);
        Assert.Equal(201, (await host.Post("/api/jobs", body, change: request => request.Headers.Add("Origin", host.Url))).Status);
        Assert.Equal(1, (await host.Get("/api/jobs")).GetProperty("total").GetInt32());
    }

    [Fact]
    public async Task Timers_AsACalendar_FollowRfc5545()
    {
        await using JobHost host = await JobHost.Start();
        await host.Post("/api/jobs", """{ "piece": "table, \"the long one\"; left" }""");
        await host.Post("/api/jobs/1/coats", "{}");
        string text = await host.Text("/api/jobs/1/timers.ics");

        // RFC 5545: 3.1 lines end with CR LF and are at most 75 octets; 3.4, 3.6 and 3.6.1 what must be there; 3.3.11 escapes; 3.3.5 UTC.
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        Assert.All(text.Split("\r\n"), line => Assert.True(System.Text.Encoding.UTF8.GetByteCount(line) <= 75, line));
        string[] lines = text.Replace("\r\n ", "", StringComparison.Ordinal).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("BEGIN:VCALENDAR", lines[0]);
        Assert.Equal("END:VCALENDAR", lines[^1]);
        Assert.Contains("VERSION:2.0", lines);
        Assert.Single(lines, line => line.StartsWith("PRODID:", StringComparison.Ordinal));
        int events = lines.Count(line => line == "BEGIN:VEVENT");
        Assert.Equal(2, events);
        foreach (string must in new[] { "UID:", "DTSTAMP:", "DTSTART:", "SUMMARY:" })
        {
            Assert.Equal(events, lines.Count(line => line.StartsWith(must, StringComparison.Ordinal)));
        }

        Assert.Equal(events, lines.Where(line => line.StartsWith("UID:", StringComparison.Ordinal)).Distinct().Count());
        Assert.All(lines.Where(line => line.StartsWith("DTSTART:", StringComparison.Ordinal)), line => Assert.Matches(@"^DTSTART:\d{8}T\d{6}Z$", line));
        Assert.Contains(lines, line => line.StartsWith("SUMMARY:table\\, \"the long one\"\\; left", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Button_Bouncing_BeginsACoatOnceAndThenEndsIt()
    {
        await using JobHost host = await JobHost.Start(("jobs:buttonPin", "24"), ("jobs:buttonDebounceMs", "20"));
        await host.Post("/api/jobs", """{ "piece": "side table" }""");
        GpioSource pins = host.Services.GetRequiredService<GpioSource>();
        JobStore store = host.Services.GetRequiredService<JobStore>();
        await Until(() => pins.Virtual.OpenMode(24) == PinMode.InputPullUp);

        Bounce(pins, PinValue.Low);
        await Until(() => store.Find(1)!.Coats.Count == 1);
        Bounce(pins, PinValue.High);
        await Task.Delay(TimeSpan.FromMilliseconds(200), TimeProvider.System);
        JobCoat coat = Assert.Single(store.Find(1)!.Coats);
        Assert.True(coat.IsOpen);
        Assert.Equal("button", coat.MarkedBy);
        Bounce(pins, PinValue.Low);
        await Until(() => store.Find(1)!.OpenCoat is null);
        Assert.Single(store.Find(1)!.Coats);
    }

    private static void Bounce(GpioSource pins, PinValue end)
    {
        for (int i = 0; i < 4; i++)
        {
            pins.Virtual.SetInput(24, end);
            pins.Virtual.SetInput(24, !end);
        }

        pins.Virtual.SetInput(24, end);
    }

    private static async Task Until(Func<bool> holds)
    {
        for (int i = 0; i < 600 && !holds(); i++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
        }

        Assert.True(holds());
    }
}
