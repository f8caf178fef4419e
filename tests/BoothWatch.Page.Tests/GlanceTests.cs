using System.Text.Json;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Page;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Playwright;
using Xunit.Abstractions;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>What the glance offers beside the verdict: cup, time left, running job, themes, a screen that stays awake, and how fast it is there.</summary>
[Collection(BrowserTests.Name)]
public sealed class GlanceTests(Browser browser, ITestOutputHelper output)
{
    [BrowserFact]
    public async Task Cup_Chosen_ChangesEveryMillilitreAndIsKept()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.SlowDown);
        await using Tab tab = await browser.Open(shop.Url, 390, 844);
        await Expect(tab.Page.GetByRole(AriaRole.Radio)).ToHaveCountAsync(5);
        await Expect(tab.Page.GetByRole(AriaRole.Radio, new() { Name = "300 mL" })).ToBeCheckedAsync();

        // From 5 % to 9 % of the unretarded mix: 4 mL for each 100 mL.
        await tab.Page.GetByRole(AriaRole.Radio, new() { Name = "1000 mL" }).CheckAsync();
        await Expect(tab.Field("retarder")).ToHaveTextAsync("+40\u00a0mL");
        await Expect(tab.Field("action")).ToContainTextAsync("add 40\u00a0mL more retarder (to 9\u00a0%)");
        await Expect(tab.Page.Locator("#cupSize")).ToHaveTextAsync("1000\u00a0mL");
        await tab.Page.ReloadAsync();
        await Expect(tab.Field("retarder")).ToHaveTextAsync("+40\u00a0mL");
        await Expect(tab.Page.GetByRole(AriaRole.Radio, new() { Name = "1000 mL" })).ToBeCheckedAsync();
        Assert.Empty(tab.Complaints);
    }

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Targets_AtPhoneAndTabletSize_FitAGlovedFinger(int width, int height)
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        await shop.Show(Samples.SlowDown);
        await using Tab tab = await browser.Open(shop.Url, width, height);
        await tab.Page.Locator(".past[data-drawn]").WaitForAsync();
        string small = await tab.Page.EvaluateAsync<string>(
            "JSON.stringify([...document.querySelectorAll('button, a, input, select, .cups label')].filter(e => e.offsetParent).map(e => [e.textContent || e.value || e.id, e.getBoundingClientRect()]).filter(([, r]) => r.width < 48 || r.height < 56).map(([t, r]) => `${t} ${r.width}x${r.height}`))");
        Assert.Equal("[]", small);
    }

    [ChartBrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Keyboard_Alone_ReachesEveryControlAndShowsWhereItIs(int width, int height)
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        await shop.Show(Samples.SlowDown);
        await using Tab tab = await browser.Open(shop.Url, width, height);
        await tab.Page.Locator(".past[data-drawn]").WaitForAsync();
        List<string> reached = [];
        for (int i = 0; i < 25; i++)
        {
            await tab.Page.Keyboard.PressAsync("Tab");
            string[] at = await tab.Page.EvaluateAsync<string[]>(
                "(() => { const e = document.activeElement, ring = e.matches('.cups input') ? e.nextElementSibling : e; return [e.getAttribute('aria-label') ?? e.textContent, getComputedStyle(ring).outlineStyle, getComputedStyle(ring).outlineWidth, e.tagName]; })()");
            if (at[3] == "BODY")
            {
                break;
            }

            reached.Add(at[0].Trim());
            Assert.Equal(("solid", "3px"), (at[1], at[2]));
        }

        // One stop for the group of cups, whose arrows choose.
        string[] chart = ["This run", "Hour", "Day", "Week", "Month", "Moment in the chart", "Earlier", "Later", "Wider", "Closer"];
        string[] links = await tab.Page.EvaluateAsync<string[]>("[...document.querySelectorAll('.elsewhere :is(a, button)')].map(a => a.textContent)");
        Assert.Contains("Jobs and coats", links);
        Assert.Equal(["Keep on", "300 mL", .. links, .. chart], reached.Where(name => name is not ("Light" or "Dark")));

        await tab.Page.GetByRole(AriaRole.Radio, new() { Name = "300 mL" }).FocusAsync();
        await tab.Page.Keyboard.PressAsync("ArrowRight");
        await Expect(tab.Field("retarder")).ToHaveTextAsync("+20\u00a0mL");
    }

    [BrowserFact]
    public async Task Left_OfAClosingMargin_IsShownWithItsIfAndElseNot()
    {
        // At 1200 times the speed twenty minutes pass in a second: of the clock of the server, which stands but for the steps taken here, as
        // that of the browser does from then on.
        FakeTimeProvider time = new(TimeProvider.System.GetUtcNow());
        await using ShopPage shop = await ShopPage.Start(time: time, sources: Samples.Sources with { Demo = () => new Service.Page.DemoMoment("13:40", "rain arrives", 1200) });
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url, fakeClock: true);
        await Expect(tab.Field("word")).ToHaveTextAsync("Spray");
        await Expect(tab.Page.Locator("#left")).ToBeHiddenAsync();
        await tab.Page.Clock.PauseAtAsync(DateTimeOffset.FromUnixTimeMilliseconds(await tab.Page.EvaluateAsync<long>("Date.now() + 1000")).UtcDateTime);

        // 1 °C a second, so 3 °C/h for the shop: from 4 °C to 2 °C, which leaves 40 minutes.
        for (int step = 0; step <= 40; step++)
        {
            await shop.Show(Samples.Spray with { Film = Samples.Spray.Film! with { BlushMarginC = 4.0 - (0.05 * step) } });
            time.Advance(TimeSpan.FromMilliseconds(50));
        }

        await Expect(tab.Page.Locator("#left")).ToBeVisibleAsync();
        await Expect(tab.Field("leftMeaning")).ToContainTextAsync("if this went on");
        await Expect(tab.Field("left")).ToHaveTextAsync("40\u00a0min");
    }

    [BrowserFact]
    public async Task Theme_Switched_ReadsInBothAndIsKept()
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url);
        ILocator root = tab.Page.Locator("html");
        string first = (await root.GetAttributeAsync("data-theme"))!;
        await tab.Page.Locator("#theme").ClickAsync();
        string second = first == "light" ? "dark" : "light";
        await Expect(root).ToHaveAttributeAsync("data-theme", second);
        await tab.Page.ReloadAsync();
        await Expect(root).ToHaveAttributeAsync("data-theme", second);
        Assert.Empty(tab.Complaints);
    }

    [BrowserTheory]
    [InlineData(ColorScheme.Dark, "dark")]
    [InlineData(ColorScheme.Light, "light")]
    public async Task Theme_NotChosen_IsThatOfTheDevice(ColorScheme scheme, string theme)
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open("about:blank");
        await tab.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
        await tab.Page.GotoAsync(shop.Url);
        await Expect(tab.Page.Locator("html")).ToHaveAttributeAsync("data-theme", theme);
    }

    [BrowserFact]
    public async Task Screen_AskedToStayOn_HoldsTheLockAndLetsItGo()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open("about:blank");
        // Headless Chromium has no screen to keep on: what the page asks of the browser is what is looked at.
        await tab.Page.AddInitScriptAsync(
            "window.held = 0; Object.defineProperty(navigator, 'wakeLock', { value: { request: async kind => { window.held++; const lock = new EventTarget(); lock.release = async () => { window.held--; lock.dispatchEvent(new Event('release')); }; return lock; } } });");
        await tab.Page.GotoAsync(shop.Url);
        ILocator button = tab.Page.Locator("#awake");
        Assert.Equal(0, await tab.Page.EvaluateAsync<int>("held"));
        await button.ClickAsync();
        await Expect(button).ToHaveAttributeAsync("aria-pressed", "true");
        Assert.Equal(1, await tab.Page.EvaluateAsync<int>("held"));
        await tab.Page.ReloadAsync();
        await tab.Page.WaitForFunctionAsync("held === 1");
        await button.ClickAsync();
        await tab.Page.WaitForFunctionAsync("held === 0");
    }

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Job_Running_IsMarkedStoppedAndUndoneFromTheGlance(int width, int height)
    {
        await using JobHost host = await JobHost.Start();
        (int status, JsonElement job) = await host.Post("/api/jobs", """{ "piece": "side table", "schedule": "touch-up" }""");
        Assert.Equal(201, status);
        await using Tab tab = await browser.Open(host.Url, width, height);
        await tab.SignIn(host.SignInLink, host.Url);
        await Expect(tab.Page.Locator("#jobName")).ToHaveTextAsync("Next for side table");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Mark flash coat" }).ClickAsync();
        await Expect(tab.Page.Locator("#jobWhat")).ToHaveTextAsync("flash, being sprayed");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Mark flash coat" }).ClickAsync();
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Stop flash coat" }).ClickAsync();
        await Expect(tab.Page.Locator("#jobWhat")).ToHaveTextAsync("clear coat");
        JsonElement kept = await host.Get($"/api/jobs/{job.GetProperty("id").GetInt64()}");
        Assert.Single(kept.GetProperty("coats").EnumerateArray());
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task SoftFilm_AtRisk_IsShownWithWhatToDo()
    {
        await using ShopPage shop = await ShopPage.Start(sources: Samples.Sources with { HasJobs = true });
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open("about:blank");
        await AnswerJob(tab, "wet");
        await tab.Page.GotoAsync(shop.Url);
        await Expect(tab.Page.Locator("#risk")).ToContainTextAsync("the piece is 0.4 °C below the dew point");
        await Expect(tab.Page.Locator("#risk")).ToContainTextAsync("warm the piece gently");
        await AnswerJob(tab, "safe");
        await tab.Page.ReloadAsync();
        await Expect(tab.Page.Locator("#job")).ToBeVisibleAsync();
        await Expect(tab.Page.Locator("#risk")).ToBeHiddenAsync();
    }

    [BrowserFact]
    public async Task FirstLoad_OnAThrottledPhone_IsBelow200KilobytesAndItsTimesAreWrittenDown()
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        await shop.Show(Samples.SlowDown);
        await using Tab warm = await browser.Open(shop.Url);
        await warm.Page.Locator(".past[data-drawn]").WaitForAsync();

        // The "Slow 4G" of the usual page audits: 150 ms, 1.6 Mbit/s down, 0.75 Mbit/s up; alone, and with a processor four times slower.
        foreach (int slower in new[] { 1, 4 })
        {
            await using Tab tab = await browser.Open("about:blank", 390, 844);
            ICDPSession devTools = await tab.Page.Context.NewCDPSessionAsync(tab.Page);
            long bytes = 0;
            devTools.Event("Network.loadingFinished").OnEvent += (_, args) => Interlocked.Add(ref bytes, (long)args!.Value.GetProperty("encodedDataLength").GetDouble());
            await devTools.SendAsync("Network.enable");
            await devTools.SendAsync("Network.emulateNetworkConditions", new Dictionary<string, object>
            {
                ["offline"] = false,
                ["latency"] = 150,
                ["downloadThroughput"] = 1_638_400 / 8,
                ["uploadThroughput"] = 750_000 / 8,
            });
            await devTools.SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object> { ["rate"] = slower });
            await shop.Show(Samples.SlowDown);
            await tab.Page.GotoAsync(shop.Url);
            await tab.Page.Locator(".past[data-drawn]").WaitForAsync();
            double glanceMs = await tab.Page.EvaluateAsync<double>("performance.getEntriesByName('glance')[0].startTime");
            double paintMs = await tab.Page.EvaluateAsync<double>("performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? -1");
            output.WriteLine($"first load {bytes} bytes; processor {slower} times slower: verdict on the page after {glanceMs:0} ms, first paint after {paintMs:0} ms");
            Assert.InRange(bytes, 10_000, 200_000);
        }
    }

    private static async Task AnswerJob(Tab tab, string state)
    {
        const string Job = """
            { "id": 1, "piece": "side table", "finished": null, "coats": [], "timers": [], "next": { "kind": "clear" }, "undoEntry": null,
              "watch": { "state": "STATE", "finding": "the piece is 0.4 °C below the dew point: dew on a soft film", "action": "warm the piece gently and dry the air; do not touch the film" } }
            """;
        await tab.Page.UnrouteAllAsync();
        await tab.Page.RouteAsync("**/api/jobs?*", route => route.FulfillAsync(new() { Body = """{ "total": 1, "rows": [{ "id": 1 }] }""", ContentType = "application/json" }));
        await tab.Page.RouteAsync("**/api/jobs/1", route => route.FulfillAsync(new() { Body = Job.Replace("STATE", state, StringComparison.Ordinal), ContentType = "application/json" }));
        await tab.Page.RouteAsync("**/api/coats?*", route => route.FulfillAsync(new() { Body = """{ "total": 0, "rows": [] }""", ContentType = "application/json" }));
    }
}
