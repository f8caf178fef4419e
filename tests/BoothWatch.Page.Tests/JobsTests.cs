using System.Text.Json;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Tests.Jobs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>The page of jobs in a real browser, over the whole service.</summary>
[Collection(BrowserTests.Name)]
public sealed class JobsTests(Browser browser)
{
    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Coat_ByTaps_IsMarkedStoppedJudgedAndUndone(int width, int height)
    {
        await using JobHost host = await JobHost.Start();
        await using Tab tab = await browser.Open(host.Url, width, height);
        await tab.SignIn(host.SignInLink, host.Url + "/jobs");
        await tab.Page.GetByLabel("Piece").First.FillAsync("side table <b>");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Start" }).ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#piece")).ToHaveTextAsync("side table <b>");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Mark flash coat" }).ClickAsync();
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Stop coat 1" }).ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#timers li").First).ToContainTextAsync("clear coat");
        await tab.Page.GetByLabel("How coat 1 came out").SelectOptionAsync("orange-peel");
        await Assertions.Expect(tab.Page.Locator("#coats li").First).ToContainTextAsync("orange peel");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Undo outcome of flash coat 1" }).ClickAsync();
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Undo stop of flash coat 1" }).WaitForAsync();

        Assert.Equal(
            ["record.pdf", "record.csv", "record.csv-metadata.json", "record.json"],
            await tab.Page.EvaluateAsync<string[]>("[...document.querySelectorAll('#record a')].map(link => link.href.replace(/.*\\//, ''))"));
        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
        Assert.Empty(tab.Complaints);

        await tab.Page.GotoAsync(host.Url + "/jobs");
        await Assertions.Expect(tab.Page.Locator("#list li").First).ToContainTextAsync("side table <b>");
        await Assertions.Expect(tab.Page.Locator("#found")).ToHaveTextAsync("1 job");
    }

    /// <summary>What people read is in the unit of the shop, the JSON is not; a difference of temperatures has no offset.</summary>
    [BrowserFact]
    public async Task Temperatures_InAShopThatReadsFahrenheit_AreInItOnEveryList()
    {
        await using JobHost host = await JobHost.Start(("booth:temperatureUnit", "F"), ("jobs:demoPast", "true"));
        host.Services.GetServices<IHostedService>().OfType<DemoPast>().Single().Create(CancellationToken.None);
        await using Tab tab = await browser.Open("about:blank", 390, 844);
        await tab.SignIn(host.SignInLink, host.Url + "/jobs");
        await tab.Page.Locator("#list li").First.WaitForAsync();
        JsonElement job = (await host.Get("/api/jobs?take=50")).GetProperty("rows").EnumerateArray().First(row => row.GetProperty("leastMarginC").ValueKind == JsonValueKind.Number);
        string margin = Written(job.GetProperty("leastMarginC").GetDouble() * 1.8);
        await Assertions.Expect(tab.Page.Locator("#list")).ToContainTextAsync($"least margin {margin} °F");
        Assert.DoesNotContain("°C", await tab.Page.Locator("body").InnerTextAsync(), StringComparison.Ordinal);

        // A margin of 5.4 °F at most is one of 3 °C.
        await tab.Page.GetByLabel("Margin at most, °F").FillAsync("5.4");
        int wanted = (await host.Get("/api/coats?marginTo=3&take=50")).GetProperty("total").GetInt32();
        Assert.InRange(wanted, 1, (await host.Get("/api/coats?take=50")).GetProperty("total").GetInt32() - 1);
        await tab.Page.Locator("#searchForm button").ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#found")).ToHaveTextAsync($"{wanted} coat{(wanted == 1 ? "" : "s")}");
        Assert.DoesNotContain("°C", await tab.Page.Locator("body").InnerTextAsync(), StringComparison.Ordinal);

        await tab.Page.GotoAsync($"{host.Url}/jobs?id={job.GetProperty("id").GetInt64()}");
        JsonElement moment = (await host.Get($"/api/jobs/{job.GetProperty("id").GetInt64()}")).GetProperty("coats").EnumerateArray()
            .Select(coat => coat.GetProperty("moment")).First(one => one.ValueKind == JsonValueKind.Object);
        await Assertions.Expect(tab.Page.Locator("#coats")).ToContainTextAsync(
            $"air {Written((moment.GetProperty("airTemperatureC").GetDouble() * 1.8) + 32)} °F");
        Assert.DoesNotContain("°C", await tab.Page.Locator("body").InnerTextAsync(), StringComparison.Ordinal);

        await tab.Page.GotoAsync(host.Url + "/limit");
        await tab.Page.Locator("#coats li").First.WaitForAsync();
        Assert.DoesNotContain("°C", await tab.Page.Locator("body").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(tab.Complaints);
    }

    private static string Written(double value) =>
        (value <= -0.05 ? "−" : "") + Math.Abs(value).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);

    [BrowserTheory]
    [InlineData(ColorScheme.Dark)]
    [InlineData(ColorScheme.Light)]
    public async Task Forms_OnAPhone_FillTheirCardAndKeepTheirDistance(ColorScheme theme)
    {
        await using JobHost host = await JobHost.Start(("jobs:demoPast", "true"));
        host.Services.GetServices<IHostedService>().OfType<DemoPast>().Single().Create(CancellationToken.None);
        await using Tab tab = await browser.Open("about:blank", 390, 844);
        await tab.Page.EmulateMediaAsync(new() { ColorScheme = theme });
        await tab.SignIn(host.SignInLink, host.Url + "/jobs");
        await tab.Page.Locator("#list li").First.WaitForAsync();

        // Right edges of what ends a row, px: all the same as that of the card's content.
        string[] edges = await tab.Page.EvaluateAsync<string[]>(
            "[...document.querySelectorAll('#startForm, #startForm :is(input, select, button), #searchForm :is([name=piece], [name=to], [name=marginTo], button)')].map(e => e.getBoundingClientRect().right.toFixed(0))");
        Assert.Single(edges.Distinct());
        Assert.True(await Gap(tab, "#searchForm", "#found") >= 6, "the search button touches the count below it");
        Assert.Empty(await TooSmall(tab));

        await tab.Page.GotoAsync(host.Url + "/jobs?id=1");
        await tab.Page.Locator("#coats li").First.WaitForAsync();
        Assert.True(await Gap(tab, "#about", "#demo") >= 6, "the frame of the demo touches the words above it");
        Assert.Empty(await TooSmall(tab));
        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
    }

    private static Task<double> Gap(Tab tab, string above, string below) => tab.Page.EvaluateAsync<double>(
        "([above, below]) => document.querySelector(below).getBoundingClientRect().top - document.querySelector(above).getBoundingClientRect().bottom", new[] { above, below });

    // 44 px: the size of a target in WCAG 2.2, 2.5.5.
    private static Task<string[]> TooSmall(Tab tab) => tab.Page.EvaluateAsync<string[]>(
        "[...document.querySelectorAll('a, button, input, select')].filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.outerHTML)");
}
