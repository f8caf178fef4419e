using System.Text.Json;
using BoothWatch.Service.Access;
using BoothWatch.Service.Tests.Jobs;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>The addresses of the checks over the whole service.</summary>
public sealed class ChecksApiTests
{
    [Fact]
    public async Task Check_OverTheWholeService_TurnsTheVerdictToWait_AndIsInTheAnswers()
    {
        await using JobHost host = await JobHost.Start();
        await Until(async () => (await host.Get("/api/now")).GetProperty("air").ValueKind == JsonValueKind.Object);
        JsonElement before = await host.Get("/api/checks");
        Assert.Equal(["boothAir", "intakeAir"], before.GetProperty("sensors").EnumerateArray().Select(sensor => sensor.GetProperty("name").GetString()));
        Assert.Equal(4, before.GetProperty("salts").GetArrayLength());
        Assert.Equal("No check on record", before.GetProperty("sensors")[0].GetProperty("headline").GetString());

        (int status, JsonElement begun) = await host.Post("/api/checks/boothAir/begin", "{}");
        Assert.Equal(200, status);
        Assert.Equal("begun", begun.GetProperty("sensors")[0].GetProperty("running").GetProperty("stage").GetString());
        await Until(async () => (await host.Get("/api/now")).GetProperty("reasons")[0].GetProperty("rule").GetString() == "booth-air-unknown");
        JsonElement now = await host.Get("/api/now");
        Assert.Equal("wait", now.GetProperty("verdict").GetString());
        Assert.Equal(JsonValueKind.Null, now.GetProperty("air").ValueKind);
        Assert.All(
            now.GetProperty("readings").EnumerateArray().Where(reading => reading.GetProperty("sensor").GetString() == "boothAir"),
            reading => Assert.Equal("being-checked", reading.GetProperty("quality").GetString()));

        Assert.Equal(409, (await host.Post("/api/checks/boothAir/begin", "{}")).Status);
        (status, JsonElement wrong) = await host.Post("/api/checks/boothAir/jar", """{ "salt": "sugar" }""");
        Assert.Equal(400, status);
        Assert.Contains("sodium-chloride", wrong.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(200, (await host.Post("/api/checks/boothAir/jar", """{ "salt": "sodium-chloride" }""")).Status);
        (status, JsonElement early) = await host.Post("/api/checks/boothAir/result", "{}");
        Assert.Equal(409, status);
        Assert.StartsWith("not yet:", early.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(400, (await host.Post("/api/checks/boothAir/back", """{ "cancelled": "yes" }""")).Status);
        Assert.Equal(409, (await host.Post("/api/checks/boothAir/replaced", "{}")).Status);
        Assert.Equal(200, (await host.Post("/api/checks/boothAir/back", """{ "cancelled": true }""")).Status);
        Assert.Equal("returning", (await host.Get("/api/checks")).GetProperty("sensors")[0].GetProperty("running").GetProperty("stage").GetString());
        Assert.Equal(409, (await host.Post("/api/checks/piece/begin", "{}")).Status);
        Assert.Equal(200, (await host.Post("/api/checks/intakeAir/replaced", "{}")).Status);
    }

    [Fact]
    public async Task Change_WithoutASessionOrTheHeader_IsRefused_AndHoldsNothing()
    {
        await using JobHost host = await JobHost.StartSignedOut(null);
        Assert.Equal(401, (await host.Post("/api/checks/boothAir/begin", "{}")).Status);
        await using JobHost signedIn = await JobHost.Start();
        Assert.Equal(403, (await signedIn.Post("/api/checks/boothAir/begin", "{}", change: request => request.Headers.Remove(AccessGate.ChangeHeader))).Status);
        Assert.Equal(JsonValueKind.Null, (await signedIn.Get("/api/checks")).GetProperty("sensors")[0].GetProperty("running").ValueKind);
    }

    [Fact]
    public async Task Page_AndItsFiles_AreServed_LinkedAndDescribed()
    {
        await using JobHost host = await JobHost.Start();
        Assert.Contains("/checks.js", await host.Text("/checks"), StringComparison.Ordinal);
        Assert.Contains("/api/checks", await host.Text("/checks.js"), StringComparison.Ordinal);
        Assert.NotEmpty(await host.Text("/checks.css"));
        Assert.Contains("href=\"/checks\"", await host.Text("/"), StringComparison.Ordinal);
        Assert.Contains("href=\"/checks\"", await host.Text("/setup"), StringComparison.Ordinal);
        string api = await host.Text("/api/openapi.json");
        Assert.All(["", "/{sensor}/begin", "/{sensor}/jar", "/{sensor}/result", "/{sensor}/back", "/{sensor}/replaced"], tail => Assert.Contains($"\"/api/checks{tail}\"", api, StringComparison.Ordinal));
    }

    private static async Task Until(Func<Task<bool>> holds)
    {
        for (int i = 0; i < 400 && !await holds(); i++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
        }

        Assert.True(await holds());
    }
}
