using System.Text.Json;
using System.Xml.Linq;
using BoothWatch.Jobs;
using BoothWatch.Service.Tests.Jobs;

namespace BoothWatch.Service.Tests.Limits;

/// <summary>The shop's own limit over a real server.</summary>
public sealed class LimitApiTests
{
    [Fact]
    public async Task Limit_WithoutCoats_SaysThatItIsOffAndHowToSwitchItOn()
    {
        await using JobHost host = await JobHost.Start();
        JsonElement limit = await LimitSample.Known(host, 0);
        Assert.False(limit.GetProperty("enabled").GetBoolean());
        Assert.Equal(0.5, limit.GetProperty("inForceC").GetDouble());
        Assert.Equal("none", limit.GetProperty("change").GetString());
        Assert.Equal("Switched off. If it were on, the required margin would stay at 0.5\u00a0°C.", limit.GetProperty("headline").GetString());
        Assert.Contains(limit.GetProperty("words").EnumerateArray(), words => words.GetString()!.Contains("limit:enabled", StringComparison.Ordinal));
        Assert.Equal(4, limit.GetProperty("gates").GetArrayLength());
    }

    [Fact]
    public async Task Limit_SwitchedOn_ReachesTheVerdictAndSaysSo()
    {
        await using JobHost host = await JobHost.Start(("limit:enabled", "true"));
        LimitSample.Enter(host, 6, 1.2, CoatOutcome.Blushed);
        JsonElement limit = await LimitSample.Known(host, 6);
        double required = limit.GetProperty("inForceC").GetDouble();
        Assert.True(required > 0.5);
        Assert.Equal(required, limit.GetProperty("shopC").GetDouble());
        Assert.Equal("raised", limit.GetProperty("change").GetString());
        Assert.StartsWith("Required margin ", limit.GetProperty("headline").GetString(), StringComparison.Ordinal);
        Assert.Equal(6, limit.GetProperty("coats").GetArrayLength());
        Assert.True(limit.GetProperty("coats")[0].GetProperty("isClose").GetBoolean());

        // The shop day begins dry enough to spray: the reason names the shop's own limit.
        string says = FormattableString.Invariant($"(required margin {required:0.0} °C, from 6 of this shop's coats)");
        using CancellationTokenSource late = new(TimeSpan.FromSeconds(60));
        while (!(await host.Get("/api/now")).GetProperty("reasons").EnumerateArray().Any(r => r.GetProperty("finding").GetString()!.Contains(says, StringComparison.Ordinal)
            || r.GetProperty("action").GetString()!.Contains(says, StringComparison.Ordinal)))
        {
            await Task.Delay(TimeSpan.FromMilliseconds(200), TimeProvider.System, late.Token);
        }
    }

    [Fact]
    public async Task Page_AndItsFiles_AreServed()
    {
        await using JobHost host = await JobHost.Start();
        Assert.Contains("/limit.js", await host.Text("/limit"), StringComparison.Ordinal);
        Assert.Contains("/api/limit", await host.Text("/limit.js"), StringComparison.Ordinal);
        Assert.NotEmpty(await host.Text("/limit.css"));
        Assert.Contains("href=\"/limit\"", await host.Text("/jobs"), StringComparison.Ordinal);
        Assert.Contains("\"/api/limit\"", await host.Text("/api/openapi.json"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("width=1")]
    [InlineData("height=99999")]
    [InlineData("theme=pink")]
    public async Task Chart_OfAWrongParameter_IsRefused(string query)
    {
        await using JobHost host = await JobHost.Start();
        Assert.Equal(400, await host.Status("/limit.svg?" + query));
    }

    [Fact]
    public async Task Chart_OfCoats_HasAMarkForEachAndItsAxes()
    {
        await using JobHost host = await JobHost.Start();
        LimitSample.Enter(host, 5, 0.4, CoatOutcome.Blushed);
        LimitSample.Enter(host, 9, 1.6, CoatOutcome.Clear);
        await LimitSample.Known(host, 14);
        string text = await host.Text("/limit.svg?width=720&height=400");
        XElement svg = XElement.Parse(text);
        Assert.Equal("720", svg.Attribute("width")!.Value);
        string[] words = [.. svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value.Trim())];
        foreach (string word in new[] { "blushed: 5", "did not blush: 9", "chance of blushing, %", "blush margin by the model, °C", "wanted" })
        {
            Assert.Contains(word, words);
        }
    }
}
