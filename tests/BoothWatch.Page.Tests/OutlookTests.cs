using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outlook;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>
/// The question of the morning: is today a spray day, and for how long? From a journal filled with days, in a real browser. Set
/// PAGE_TESTS_SCREENSHOTS to a folder to keep pictures.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed class OutlookTests(Browser browser)
{
    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Morning_OfAShopWithARecord_IsAnsweredOnTheGlance_AndExplained(int width, int height)
    {
        await using JobHost host = await OutlookSample.Start(40, (back, hour) => OutlookSample.Wetter(back, hour));
        await using Tab tab = await browser.Open(host.Url, width, height);
        ILocator tile = tab.Page.Locator("#outlook");
        await Expect(tile).ToBeVisibleAsync();
        await Expect(tile).ToContainTextAsync("until about 1");
        await Expect(tile).ToContainTextAsync("of 10 such days");
        await Expect(tile).Not.ToContainTextAsync("undefined");

        // Readable from three metres: as large as the other marks, and whole.
        Assert.InRange(await tab.Page.EvaluateAsync<double>("parseFloat(getComputedStyle(document.getElementById('outlookMark')).fontSize)"), 28, 80);
        await Check(tab, $"outlook-glance-{width}");

        await tab.Page.GetByRole(AriaRole.Link, new() { Name = "Outlook" }).First.ClickAsync();
        await Expect(tab.Page).ToHaveTitleAsync("Outlook · BoothWatch");
        await Expect(tab.Page.Locator("#mark")).ToContainTextAsync("until about 1");
        await Expect(tab.Page.Locator("#basis")).ToContainTextAsync("from the last 30 days of this shop");
        await Expect(tab.Page.Locator("#words")).ToContainTextAsync("no verdict");
        await Expect(tab.Page.Locator("#words")).ToContainTextAsync("the exhaust stays on");
        await Expect(tab.Page.Locator("#scores")).ToContainTextAsync("as it is now");
        Assert.InRange(await tab.Page.Locator("#hours li").CountAsync(), 2, 10);
        await tab.Page.WaitForFunctionAsync("() => document.getElementById('outlookChart').naturalWidth > 100");
        Assert.InRange(await tab.Page.EvaluateAsync<double>("(i => i.clientWidth / i.naturalWidth)(document.getElementById('outlookChart'))"), 0.97, 1.03);
        await Check(tab, $"outlook-{width}");
    }

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Morning_OfAYoungShop_IsSilent_AndSaysPlainlyWhy(int width, int height)
    {
        await using JobHost host = await OutlookSample.Start(4, (back, hour) => OutlookSample.Wetter(back, hour));
        await using Tab tab = await browser.Open(host.Url, width, height);
        ILocator tile = tab.Page.Locator("#outlook");
        await Expect(tile).ToContainTextAsync("4 of the 15 days needed are on record");
        await Expect(tile).Not.ToContainTextAsync("pray day");
        await Check(tab, $"outlook-silent-glance-{width}");

        await tab.Page.GotoAsync(host.Url + "/outlook");
        await Expect(tab.Page.Locator("#mark")).ToHaveTextAsync("No outlook");
        await Expect(tab.Page.Locator("#meaning")).ToContainTextAsync("4 of the 15 days needed are on record");
        await Expect(tab.Page.Locator("#day")).ToBeHiddenAsync();
        await Expect(tab.Page.Locator("#words")).ToContainTextAsync("as it is now");
        await Check(tab, $"outlook-silent-{width}");
    }

    [BrowserFact]
    public async Task Keyboard_Alone_LeadsFromTheGlanceToTheOutlookAndBack()
    {
        await using JobHost host = await OutlookSample.Start(40, (back, hour) => OutlookSample.Wetter(back, hour));
        await using Tab tab = await browser.Open(host.Url);
        await Expect(tab.Page.Locator("#outlook")).ToBeVisibleAsync();
        await Reach(tab, "/outlook");
        await tab.Page.Keyboard.PressAsync("Enter");
        await Expect(tab.Page).ToHaveTitleAsync("Outlook · BoothWatch");
        await Reach(tab, "/");
        await tab.Page.Keyboard.PressAsync("Enter");
        await Expect(tab.Page.Locator("#outlook")).ToBeVisibleAsync();
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Tile_OfAServerThatNoLongerAnswers_IsHiddenBeforeItGrowsUntrue()
    {
        JobHost host = await OutlookSample.Start(40, (back, hour) => OutlookSample.Wetter(back, hour));
        await using Tab tab = await browser.Open(host.Url, fakeClock: true);
        await Expect(tab.Page.Locator("#outlook")).ToBeVisibleAsync();
        await host.DisposeAsync();
        await tab.Page.Clock.RunForAsync(21 * 60_000);
        await Expect(tab.Page.Locator("#outlook")).ToBeHiddenAsync();
    }

    private static async Task Reach(Tab tab, string path)
    {
        for (int i = 0; i < 40; i++)
        {
            await tab.Page.Keyboard.PressAsync("Tab");
            if (await tab.Page.EvaluateAsync<bool>("path => document.activeElement.tagName === 'A' && new URL(document.activeElement.href).pathname === path", path))
            {
                Assert.Equal("solid", await tab.Page.EvaluateAsync<string>("getComputedStyle(document.activeElement).outlineStyle"));
                return;
            }
        }

        Assert.Fail($"no link to {path} can be reached by keyboard");
    }

    private static async Task Check(Tab tab, string name)
    {
        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        if (Environment.GetEnvironmentVariable("PAGE_TESTS_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        }

        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
        Assert.Empty(tab.Complaints);
    }
}
