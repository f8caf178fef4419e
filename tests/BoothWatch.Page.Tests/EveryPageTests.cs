using System.Text.Json;
using BoothWatch.Service.Tests.Jobs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>What holds for every page, dark and light, in °C and °F, on a phone and on a tablet.</summary>
[Collection(BrowserTests.Name)]
public sealed class EveryPageTests(Browser browser)
{
    private const int LeastPixels = 44; // WCAG 2.2, success criterion 2.5.5 (target size, enhanced)

    // Links in running text are set by its lines; WCAG lets them be.
    private const string SmallTargets = """
        least => [...document.querySelectorAll("button, a, input, select, summary")]
          .filter(e => e.checkVisibility() && !e.matches(".cups input") && getComputedStyle(e).display !== "inline")
          .map(e => [e, e.getBoundingClientRect()])
          .filter(([, box]) => box.width < least || box.height < least)
          .map(([e, box]) => `${e.outerHTML.slice(0, 80)}: ${Math.round(box.width)} by ${Math.round(box.height)}`)
        """;

    [BrowserTheory]
    [InlineData(390, 844, ColorScheme.Dark, "F")]
    [InlineData(390, 844, ColorScheme.Light, "C")]
    [InlineData(1280, 800, ColorScheme.Dark, "C")]
    [InlineData(1280, 800, ColorScheme.Light, "F")]
    public async Task Page_FitsTheScreenAndAFinger_AndIsAccessible(int width, int height, ColorScheme scheme, string unit)
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"), ("booth:temperatureUnit", unit));
        (_, JsonElement job) = await host.Post("/api/jobs", """{ "piece": "side table", "schedule": "touch-up" }""");
        string id = job.GetProperty("id").GetRawText();
        await using Tab tab = await browser.Open("about:blank", width, height);
        await tab.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
        await tab.SignIn(host.SignInLink, host.Url);
        await Assertions.Expect(tab.Field("temperature")).ToContainTextAsync($"°{unit}");
        Assert.Equal(201, (await host.Post($"/api/jobs/{id}/coats", "{}")).Status);
        foreach (string address in new[] { "/", "/jobs", $"/jobs?id={id}", "/limit", "/what-if", "/outlook", "/checks", "/alerts", "/setup", "/sign-in" })
        {
            await tab.Page.GotoAsync(host.Url + address, new() { WaitUntil = WaitUntilState.DOMContentLoaded });
            await tab.Page.WaitForLoadStateAsync(address == "/" ? LoadState.Load : LoadState.NetworkIdle);
            await Pictures.Keep(tab, $"every-{width}-{scheme}-{unit}{address.Replace('/', '-').Replace("?id=" + id, "-one", StringComparison.Ordinal)}");
            Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), $"{address} scrolls sideways");
            string[] small = await tab.Page.EvaluateAsync<string[]>(SmallTargets, LeastPixels);
            Assert.True(small.Length == 0, $"{address} has {string.Join("; ", small)}");
            string words = await tab.Page.Locator("main").InnerTextAsync();
            Assert.True(address == "/setup" || !words.Contains(unit == "C" ? "°F" : "°C", StringComparison.Ordinal), $"{address} speaks of another unit: {words}");
            AxeResult result = await tab.Page.RunAxe();
            Assert.Empty(result.Violations.Select(v => $"{address}: {v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
        }

        Assert.Empty(tab.Complaints);
    }
}
