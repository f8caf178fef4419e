using System.Globalization;
using System.Text.Json;
using BoothWatch.Service.Page;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Page;
using BoothWatch.Verdicts;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit.Abstractions;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>The chart of the past: values, moving, zooming, by finger, mouse and key; and the drawing of the server where the library is not to be had.</summary>
[Collection(BrowserTests.Name)]
public sealed class ChartTests(Browser browser, ITestOutputHelper output)
{
    private static readonly PageSources RealTime = Samples.Sources with { Demo = () => null, Sensors = [] };

    [ChartBrowserFact]
    public async Task Keys_Alone_ReadMoveAndZoom()
    {
        await using ShopPage shop = await Start(new MinuteHistory());
        await using Tab tab = await Open(shop, 1280, 800);
        ILocator area = tab.Page.GetByRole(AriaRole.Slider, new() { Name = "Moment in the chart" });
        await area.FocusAsync();
        await tab.Page.Keyboard.PressAsync("End");
        (DateTime Time, double Air) newest = await Read(tab);
        await tab.Page.Keyboard.PressAsync("ArrowLeft");
        (DateTime Time, double Air) before = await Read(tab);
        Assert.True(before.Time < newest.Time);
        Assert.Contains("air ", await area.GetAttributeAsync("aria-valuetext"), StringComparison.Ordinal);
        Assert.Equal(MinuteHistory.TemperatureC(before.Time), before.Air, 0.2);

        (double From, double To) first = await View(tab);
        await tab.Page.Keyboard.PressAsync("+");
        (double From, double To) closer = await View(tab);
        Assert.Equal((first.To - first.From) / 2, closer.To - closer.From, 2.0);
        await tab.Page.Keyboard.PressAsync("PageUp");
        (double From, double To) earlier = await View(tab);
        Assert.Equal((closer.To - closer.From) / 2, closer.From - earlier.From, 2.0);
        await tab.Page.Keyboard.PressAsync("Escape");
        await Expect(tab.Page.Locator("#moment")).ToContainTextAsync("Newest");
        Assert.Empty(tab.Complaints);
    }

    [ChartBrowserFact]
    public async Task Finger_Dragged_MovesTheChartAndKeepsItsMoment()
    {
        await using ShopPage shop = await Start(new MinuteHistory());
        await using Tab tab = await Open(shop, 390, 844);
        (double From, double To) before = await View(tab);
        Touch touch = await Touch.On(tab);
        await touch.Down((150, 60));
        string moment = await tab.Page.Locator("#moment").InnerTextAsync();
        await touch.Move((200, 60));
        await touch.Move((250, 60));
        await touch.Up();
        (double From, double To) after = await View(tab);
        // 100 pixels to the right: so much earlier, at the same scale, and the moment stays under the finger.
        Assert.Equal((before.To - before.From) * 100 / touch.PlotWidth, before.From - after.From, 30.0);
        Assert.Equal(before.To - before.From, after.To - after.From, 2.0);
        Assert.Equal(moment, await tab.Page.Locator("#moment").InnerTextAsync());
    }

    [ChartBrowserFact]
    public async Task Fingers_SpreadApart_ZoomAboutTheirMiddle()
    {
        await using ShopPage shop = await Start(new MinuteHistory());
        await using Tab tab = await Open(shop, 390, 844);
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Day" }).ClickAsync();
        await tab.Page.Locator(".past[data-drawn=Day]").WaitForAsync();
        (double From, double To) before = await View(tab);
        Touch touch = await Touch.On(tab);
        await touch.Down((140, 60), (180, 60));
        await touch.Move((130, 60), (190, 60));
        await touch.Move((120, 60), (200, 60));
        await touch.Up();
        (double From, double To) after = await View(tab);
        // From 40 to 80 pixels apart: half the span, and what was at 160 still is.
        Assert.Equal((before.To - before.From) / 2, after.To - after.From, 60.0);
        double At((double From, double To) v) => v.From + ((v.To - v.From) * (160 - touch.PlotLeft) / touch.PlotWidth);
        Assert.Equal(At(before), At(after), 300.0);
    }

    [ChartBrowserFact]
    public async Task Mouse_OverTheChart_ReadsTheValuesUnderIt()
    {
        await using ShopPage shop = await Start(new MinuteHistory());
        await using Tab tab = await Open(shop, 1280, 800);
        ILocator plot = tab.Page.Locator(".plot.degrees .u-over");
        await plot.HoverAsync(new() { Position = new() { X = 300, Y = 80 } });
        (DateTime time, double air) = await Read(tab);
        (double from, double to) = await View(tab);
        double width = (await plot.BoundingBoxAsync())!.Width;
        Assert.Equal(from + ((to - from) * 300 / width), new DateTimeOffset(time).ToUnixTimeSeconds(), 90.0);
        Assert.Equal(MinuteHistory.TemperatureC(time), air, 0.2);
    }

    [ChartBrowserFact]
    public async Task Spans_EachChosen_ShowThatMuchAndFahrenheitWhereTheShopReadsIt()
    {
        await using ShopPage shop = await Start(new MinuteHistory(), RealTime with { TemperatureUnit = TemperatureUnit.Fahrenheit });
        await using Tab tab = await Open(shop, 1280, 800);
        foreach ((string name, double hours) in new[] { ("Hour", 1.0), ("Day", 24), ("Week", 168), ("Month", 720) })
        {
            await tab.Page.GetByRole(AriaRole.Button, new() { Name = name }).ClickAsync();
            await tab.Page.Locator($".past[data-drawn={name}]").WaitForAsync();
            (double from, double to) = await View(tab);
            Assert.Equal(hours * 3600, to - from, 2.0);
            await Pictures.Keep(tab, $"chart-{name}");
        }

        await Expect(tab.Page.Locator("#at-temperatureC")).ToContainTextAsync("°F");
        Assert.InRange(double.Parse((await tab.Page.Locator("#at-temperatureC").InnerTextAsync()).Split('\u00a0')[0], CultureInfo.InvariantCulture), 60, 80);
    }

    [ChartBrowserFact]
    public async Task Week_OfMinutes_IsDrawnAndItsTimeWrittenDown()
    {
        await using ShopPage shop = await Start(new MinuteHistory());
        await DrawWeek(shop, "past made up in memory");
    }

    [ChartBrowserFact]
    public async Task Week_OfMinutesInAJournal_IsDrawnAndItsTimeWrittenDown()
    {
        using JournalOfMinutes journal = new(days: 8);
        await using ShopPage shop = await Start(journal.History);
        await DrawWeek(shop, "from a journal");
    }

    private async Task DrawWeek(ShopPage shop, string past)
    {
        await using Tab tab = await Open(shop, 1280, 800);
        List<double> ms = [];
        for (int i = 0; i < 12; i++)
        {
            await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Hour" }).ClickAsync();
            await tab.Page.Locator(".past[data-drawn=Hour]").WaitForAsync();
            ms.Add(await tab.Page.EvaluateAsync<double>(
                """
                () => new Promise(done => {
                  const began = performance.now();
                  const past = document.getElementById('past');
                  new MutationObserver((_, watch) => {
                    if (past.dataset.drawn !== 'Week') { return; }
                    watch.disconnect();
                    requestAnimationFrame(() => setTimeout(() => done(performance.now() - began)));
                  }).observe(past, { attributes: true });
                  [...past.querySelectorAll('.spans button')].find(b => b.textContent === 'Week').click();
                })
                """));
        }

        string rows = (await tab.Page.Locator(".past").GetAttributeAsync("data-rows"))!;
        output.WriteLine($"a week of {rows} rows, {past}, tap to painted, ms: {string.Join(", ", ms.Select(m => m.ToString("0", CultureInfo.InvariantCulture)))}");
        Assert.InRange(int.Parse(rows, CultureInfo.InvariantCulture), 10_000, 10_081);
    }

    [ChartBrowserFact]
    public async Task Silence_InThePast_IsAGapAndNotALine()
    {
        await using ShopPage shop = await Start(new SampleHistory(TimeProvider.System));
        await using Tab tab = await Open(shop, 1280, 800);
        // The newest moments, then back over the silence: there a row of nothing stands.
        ILocator area = tab.Page.GetByRole(AriaRole.Slider);
        await area.FocusAsync();
        await tab.Page.Keyboard.PressAsync("End");
        for (int i = 0; i < 10; i++)
        {
            await tab.Page.Keyboard.PressAsync("Shift+ArrowLeft");
        }

        HashSet<string> seen = [];
        for (int i = 0; i < 60 && !seen.Contains("–"); i++)
        {
            seen.Add(await tab.Page.Locator("#at-temperatureC").InnerTextAsync());
            await tab.Page.Keyboard.PressAsync("ArrowRight");
        }

        Assert.Contains("–", seen);
    }

    [ChartBrowserFact]
    public async Task Coat_Marked_IsNamedWhereTheCursorMeetsIt()
    {
        await using JobHost host = await JobHost.Start();
        (_, JsonElement job) = await host.Post("/api/jobs", """{ "piece": "side table", "schedule": "touch-up" }""");
        await Task.Delay(TimeSpan.FromSeconds(2), TimeProvider.System);
        await host.Post($"/api/jobs/{job.GetProperty("id").GetInt64()}/coats", "{}");
        await Task.Delay(TimeSpan.FromSeconds(2), TimeProvider.System);
        await using Tab tab = await browser.Open(host.Url);
        await tab.Page.Locator(".past[data-drawn]").WaitForAsync();
        await tab.Page.GetByRole(AriaRole.Slider).FocusAsync();
        await tab.Page.Keyboard.PressAsync("End");
        await Expect(tab.Page.Locator("#moment")).ToContainTextAsync("flash coat 1, side table");
        await Pictures.Keep(tab, "chart-coat");
        Assert.Empty(tab.Complaints);
    }

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Library_NotToBeHad_LeavesTheDrawingOfTheServer(int width, int height)
    {
        await using ShopPage shop = await Start(new SampleHistory(TimeProvider.System));
        await using Tab tab = await browser.Open("about:blank", width, height);
        await tab.Page.RouteAsync("**/chart/uplot.js", route => route.AbortAsync());
        await tab.Page.GotoAsync(shop.Url);
        await tab.Page.Locator(".past[data-drawn=picture]").WaitForAsync();
        Assert.True(await tab.Page.EvaluateAsync<int>("document.getElementById('chart').naturalWidth") > 0);
        Assert.True(await LeastChartText(tab) >= 12, "the text of the chart is smaller than 12 pixels");
        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
    }

    [ChartBrowserFact]
    public async Task Past_ThatCannotBeRead_SaysWhy()
    {
        await using ShopPage shop = await Start(new UnreadableHistory());
        await using Tab tab = await browser.Open(shop.Url);
        await Expect(tab.Page.Locator("#chartNote")).ToContainTextAsync("check the disk or card");
    }

    [ChartBrowserTheory]
    [InlineData(390, 844, ColorScheme.Dark)]
    [InlineData(390, 844, ColorScheme.Light)]
    [InlineData(1280, 800, ColorScheme.Dark)]
    [InlineData(1280, 800, ColorScheme.Light)]
    public async Task Accessibility_ByAxe_WithChart_FindsNothing(int width, int height, ColorScheme scheme)
    {
        await using ShopPage shop = await Start(new SampleHistory(TimeProvider.System), Samples.Sources);
        await using Tab tab = await browser.Open("about:blank", width, height);
        await tab.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
        foreach (Assessment assessment in new[] { Samples.Spray, Samples.SlowDown, Samples.Wait })
        {
            await shop.Show(assessment);
            await tab.Page.GotoAsync(shop.Url);
            await tab.Page.Locator("html[data-link=live] .past[data-drawn]").WaitForAsync();
            await Pictures.Keep(tab, $"{scheme}-{assessment.Verdict}-{width}");
            AxeResult result = await tab.Page.RunAxe();
            Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
        }
    }

    private static async Task<ShopPage> Start(IHistory history, PageSources? sources = null)
    {
        ShopPage shop = await ShopPage.Start(history: history, sources: sources ?? RealTime);
        await shop.Show(Samples.Spray);
        return shop;
    }

    private async Task<Tab> Open(ShopPage shop, int width, int height)
    {
        Tab tab = await browser.Open(shop.Url, width, height);
        await tab.Page.Locator(".past[data-drawn]").WaitForAsync();
        await tab.Page.Locator(".area").ScrollIntoViewIfNeededAsync();
        return tab;
    }

    private static async Task<(DateTime Time, double Air)> Read(Tab tab)
    {
        string moment = await tab.Page.Locator("#moment").InnerTextAsync();
        string air = await tab.Page.Locator("#at-temperatureC").InnerTextAsync();
        int year = TimeProvider.System.GetLocalNow().Year;
        DateTime local = DateTime.ParseExact(moment + " " + year.ToString(CultureInfo.InvariantCulture), "ddd d MMM, HH:mm:ss yyyy", CultureInfo.InvariantCulture);
        return (TimeZoneInfo.ConvertTimeToUtc(local, TimeProvider.System.LocalTimeZone), double.Parse(air.Split('\u00a0')[0], CultureInfo.InvariantCulture));
    }

    private static async Task<(double From, double To)> View(Tab tab)
    {
        double[] view = await tab.Page.EvaluateAsync<double[]>("[Number(past.dataset.from), Number(past.dataset.to)]");
        return (view[0], view[1]);
    }

    /// <summary>The smallest text of the picture as it is shown, CSS pixels.</summary>
    private static Task<double> LeastChartText(Tab tab) => tab.Page.EvaluateAsync<double>(
        """
        (async () => {
          const chart = document.getElementById('chart');
          const svg = await (await fetch(chart.currentSrc)).text();
          const sizes = [...svg.matchAll(/font-size="([0-9.]+)"/g)].map(m => Number(m[1]));
          return Math.min(...sizes) * chart.getBoundingClientRect().width / Number(/ width="([0-9.]+)"/.exec(svg)[1]);
        })()
        """);

    private sealed class UnreadableHistory : IHistory
    {
        public IReadOnlyList<HistoryPoint> Read(DateTimeOffset from, DateTimeOffset until, int points) =>
            throw new HistoryUnavailableException("/var/lib/boothwatch/journal.db could not be read or written: check the disk or card of /var/lib/boothwatch (disk I/O error)");
    }
}
