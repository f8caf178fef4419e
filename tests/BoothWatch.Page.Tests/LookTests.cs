using BoothWatch.Service;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Page;
using BoothWatch.Service.Tests.Page;
using BoothWatch.Verdicts;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>How the page looks. Set PAGE_TESTS_SCREENSHOTS to a folder to keep pictures for a person to look at.</summary>
[Collection(BrowserTests.Name)]
public sealed class LookTests(Browser browser)
{
    public static TheoryData<string, int, int> EveryVerdictAndSize
    {
        get
        {
            TheoryData<string, int, int> data = [];
            foreach (string verdict in new[] { "spray", "slow-down", "wait", "blind", "wordy" })
            {
                data.Add(verdict, 390, 844);
                data.Add(verdict, 1280, 800);
            }

            return data;
        }
    }

    [BrowserTheory]
    [MemberData(nameof(EveryVerdictAndSize))]
    public async Task Verdict_AtPhoneAndTabletSize_HasWordColourAndShapeAndFits(string name, int width, int height)
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        await shop.Show(Samples.Spray with { Time = TimeProvider.System.GetUtcNow().AddMinutes(-30) });
        await shop.Show(Sample(name));
        await using Tab tab = await browser.Open(shop.Url, width, height);
        await tab.Page.Locator("html[data-link=live] .past[data-drawn]").WaitForAsync();

        string key = name switch { "blind" => "wait", "wordy" => "slow-down", _ => name };
        Assert.Equal(key, await tab.Verdict());
        Assert.Equal(key.Replace('-', ' '), (await tab.Field("word").InnerTextAsync()).ToLowerInvariant());
        Assert.Equal([key], await tab.Page.EvaluateAsync<string[]>(
            "[...document.querySelectorAll('.sign .shape')].filter(s => getComputedStyle(s).display !== 'none').map(s => s.classList[1])"));

        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        Assert.Equal("[]", await tab.Page.EvaluateAsync<string>(
            "JSON.stringify([...document.querySelectorAll('p, dd, dt, h1, h2, li')].filter(e => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0).map(e => e.textContent))"));
        await Pictures.Keep(tab, $"{name}-{width}");
        string inSight = name == "wordy" && width < 1280 ? ".verdict" : name is "wordy" or "wait" || width < 1280 ? ".cup .sub" : ".figures";
        Assert.True(
            await tab.Page.EvaluateAsync<bool>("part => document.querySelector(part).getBoundingClientRect().bottom <= document.querySelector('footer').getBoundingClientRect().top", inSight),
            $"{inSight} is not in sight without scrolling");

        Assert.Empty(tab.Complaints);
    }

    [BrowserTheory]
    [InlineData("slow-down", false)]
    [InlineData("wordy", false)]
    [InlineData("slow-down", true)]
    [InlineData("wordy", true)]
    public async Task Outputs_WithMuchToTell_AreNotCoveredByTheFooterOfATablet(string name, bool failing)
    {
        OutputHealth healthy = new("series", 10, 0, 0, 0, 0, null, null, null);
        OutputHealth behind = healthy with
        {
            Name = "influx",
            Queued = 86400,
            OldestWaiting = TimeSpan.FromHours(25),
            SetAside = 12,
            Dropped = 3,
            FailuresInARow = failing ? 4 : 0,
            LastError = "http://127.0.0.1:8086 cannot be reached (Connection refused)",
        };
        OutputHealth mqtt = healthy with { Name = "mqtt", Queued = 3, OldestWaiting = TimeSpan.FromMinutes(12) };
        OutputLine[] lines =
            [new("light", true, "shows slow down"), .. new[] { healthy, mqtt, healthy with { Name = "page" }, behind }.Select(OutputView.LineOf)];
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System), sources: Samples.Sources with { Outputs = () => lines });
        await shop.Show(Sample(name));
        await using Tab tab = await browser.Open(shop.Url, 1280, 800);
        await Assertions.Expect(tab.Page.Locator("#outputs li")).ToHaveCountAsync(5);
        await tab.Page.Locator(".past[data-drawn]").WaitForAsync();
        await tab.Page.EvaluateAsync("scrollTo(0, document.documentElement.scrollHeight)");

        await Pictures.Keep(tab, $"outputs-{name}-{(failing ? "failing" : "behind")}");
        Assert.True(
            await tab.Page.EvaluateAsync<bool>("document.querySelector('.health').getBoundingClientRect().bottom <= document.querySelector('footer').getBoundingClientRect().top"),
            "the footer covers the outputs");
        if (!failing)
        {
            Assert.Equal(1, await tab.Page.EvaluateAsync<int>("new Set([...document.querySelectorAll('#outputs li')].map(e => e.offsetTop)).size"));
        }
    }

    [BrowserFact]
    public async Task Word_OnAWallTablet_IsLegibleFromThreeMetres()
    {
        // ISO 9241-303 asks for characters of at least 16 minutes of arc (from memory). At 3 m that is 14 mm of capital height;
        // on a tablet 217 mm wide with 1280 CSS pixels, 82 pixels.
        double leastPixels = 3000 * Math.Tan(16 / 60.0 * Math.PI / 180) / (217.0 / 1280);
        await using ShopPage shop = await ShopPage.Start();
        foreach (string name in new[] { "spray", "slow-down", "wait" })
        {
            await shop.Show(Sample(name));
            await using Tab tab = await browser.Open(shop.Url);
            double capital = await tab.Page.EvaluateAsync<double>(
                "(() => { const h = document.querySelector('h1'), c = document.createElement('canvas').getContext('2d'); const s = getComputedStyle(h); c.font = `${s.fontWeight} ${s.fontSize} ${s.fontFamily}`; return c.measureText('W').actualBoundingBoxAscent; })()");
            Assert.True(capital >= leastPixels, $"capitals are {capital:0} px high, {leastPixels:0} are needed");
            Assert.Equal(1, await tab.Page.EvaluateAsync<double>("Math.round(document.querySelector('h1').offsetHeight / parseFloat(getComputedStyle(document.querySelector('h1')).lineHeight))"));
        }
    }

    [BrowserFact]
    public async Task SafetyLine_WhereverThePageIsScrolled_IsInSight()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        foreach ((int width, int height) in new[] { (390, 844), (1280, 800), (320, 568) })
        {
            await using Tab tab = await browser.Open(shop.Url, width, height);
            ILocator footer = tab.Page.Locator("footer");
            await Assertions.Expect(footer).ToContainTextAsync("No gas detector");
            foreach (int y in new[] { 0, 200, 5000 })
            {
                await tab.Page.EvaluateAsync("y => scrollTo(0, y)", y);
                await Assertions.Expect(footer).ToBeInViewportAsync(new() { Ratio = 1 });
            }
        }
    }

    [BrowserTheory]
    [InlineData("spray")]
    [InlineData("slow-down")]
    [InlineData("wait")]
    public async Task Accessibility_ByAxe_FindsNothing(string name)
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Sample(name));
        await using Tab tab = await browser.Open(shop.Url);
        await tab.Page.Locator("html[data-link=live]").WaitForAsync();
        await tab.Page.Locator(".past[data-drawn]").WaitForAsync();
        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
    }

    private static Assessment Sample(string name) => name switch
    {
        "spray" => Samples.Spray,
        "slow-down" => Samples.SlowDown,
        "blind" => Samples.Blind,
        "wordy" => Samples.Wordy,
        _ => Samples.Wait,
    };
}
