using System.Globalization;
using BoothWatch.Service.Tests.Page;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>The page follows the booth, and ends at wait whatever fails.</summary>
[Collection(BrowserTests.Name)]
public sealed class LiveTests(Browser browser)
{
    [BrowserFact]
    public async Task Verdict_Changes_ShowsWithoutReload()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url);
        await Live(tab);
        await tab.Page.EvaluateAsync("window.neverReloaded = true");

        await shop.Show(Samples.SlowDown);
        await Expect(tab.Field("word")).ToHaveTextAsync("Slow down");
        await Expect(tab.Field("retarder")).ToHaveTextAsync("+12\u00a0mL");
        await Expect(tab.Field("retarderMl")).ToHaveTextAsync("add 12\u00a0mL more retarder (to 9\u00a0%)");
        await Expect(tab.Page.Locator("#further li")).ToHaveCountAsync(1);
        await shop.Show(Samples.Wait);
        await Expect(tab.Field("word")).ToHaveTextAsync("Wait");
        await Expect(tab.Field("margin")).ToHaveTextAsync("−1.7\u00a0°C");
        await Expect(tab.Page.Locator("#further li")).ToHaveCountAsync(2);
        await Expect(tab.Page).ToHaveTitleAsync("Wait · corner booth, Harbour Lane · BoothWatch");
        Assert.EndsWith("/icon-wait.svg", await tab.Page.Locator("link[rel=icon]").GetAttributeAsync("href"), StringComparison.Ordinal);
        await shop.Show(Samples.Spray);
        await Expect(tab.Page.Locator("#further li")).ToHaveCountAsync(0);

        Assert.True(await tab.Page.EvaluateAsync<bool>("window.neverReloaded === true"));
        Assert.Empty(tab.Complaints);
    }

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Server_Dies_WarnsAfter5SecondsAndWaitsAfter15(int width, int height)
    {
        ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url, width, height, fakeClock: true);
        await Live(tab);
        await shop.DisposeAsync();

        await tab.Page.Clock.FastForwardAsync(4_000);
        Assert.Equal("spray", await tab.Verdict());
        await tab.Page.Clock.FastForwardAsync(3_000);
        await Expect(tab.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("No news from the booth for more than 5 s");
        Assert.Equal("spray", await tab.Verdict());
        await tab.Page.Clock.FastForwardAsync(9_000);
        await Expect(tab.Field("word")).ToHaveTextAsync("Wait");
        Assert.Equal("wait", await tab.Verdict());
        await Expect(tab.Field("action")).ToContainTextAsync("wait until this page is live again");
        await Expect(tab.Page.Locator("h1")).ToBeInViewportAsync();
        await Expect(tab.Page.Locator("#left")).ToBeHiddenAsync();
    }

    [BrowserFact]
    public async Task Server_ComesBack_PageReconnectsByItself()
    {
        ShopPage first = await ShopPage.Start();
        string url = first.Url;
        await first.Show(Samples.Spray);
        await using Tab tab = await browser.Open(url, fakeClock: true);
        await Live(tab);
        await first.DisposeAsync();
        await tab.Page.Clock.FastForwardAsync(20_000);
        await Expect(tab.Field("word")).ToHaveTextAsync("Wait");

        await using ShopPage second = await ShopPage.Start(url);
        await second.Show(Samples.SlowDown);
        await tab.Page.Clock.FastForwardAsync(11_000);

        await Expect(tab.Field("word")).ToHaveTextAsync("Slow down", new() { Timeout = 30_000 });
        await Expect(tab.Page.GetByRole(AriaRole.Alert)).ToBeHiddenAsync();
    }

    [BrowserFact]
    public async Task Loop_HangsWhileServerLives_HeartbeatsDoNotHideIt()
    {
        FakeTimeProvider time = new(TimeProvider.System.GetUtcNow());
        await using ShopPage shop = await ShopPage.Start(time: time);
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url);
        await Live(tab);

        // The server sets its next timer after each one: advance until it has spoken.
        await AdvanceUntil(time, 60, tab.Page.Locator("html[data-verdict=wait]").WaitForAsync());
        await Expect(tab.Field("word")).ToHaveTextAsync("Wait");
        await Expect(tab.Field("finding")).ToContainTextAsync("the last assessment is");
    }

    [BrowserFact]
    public async Task Heartbeats_WithoutAssessments_DoNotCountAsData()
    {
        FakeTimeProvider time = new(TimeProvider.System.GetUtcNow());
        await using ShopPage shop = await ShopPage.Start(time: time);
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url, fakeClock: true);
        await Live(tab);
        await tab.Page.Clock.FastForwardAsync(4_000);

        // To the server the assessment is 4 s old at most, so that it sends a heartbeat and not yet a wait.
        Task heard = tab.Page.EvaluateAsync("() => new Promise(done => source.addEventListener('heartbeat', () => done(true), { once: true }))");
        await AdvanceUntil(time, 2, heard);
        await tab.Page.Clock.FastForwardAsync(4_000);

        Assert.Equal("late", await tab.Page.Locator("html").GetAttributeAsync("data-link"));
        await Expect(tab.Page.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
    }

    [BrowserFact]
    public async Task Age_WhileStreamIsSilent_Ticks()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url, fakeClock: true);
        await Live(tab);
        await tab.Page.Clock.FastForwardAsync(3_000);
        string text = await tab.Page.Locator("#age").InnerTextAsync();
        Assert.InRange(double.Parse(text.Split(' ')[1], CultureInfo.InvariantCulture), 3, 5);
    }

    [BrowserFact]
    public async Task Page_OldWhenOpened_ShowsWaitUntilTheStreamSpeaks()
    {
        // As a restored tab would: the HTML was sent long ago, and no stream answers.
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        string html = await new HttpClient().GetStringAsync(new Uri(shop.Url));
        long sent = TimeProvider.System.GetUtcNow().AddHours(-2).ToUnixTimeMilliseconds();
        string old = System.Text.RegularExpressions.Regex.Replace(html, "data-sent=\"\\d+\"", $"data-sent=\"{sent}\"");
        Assert.NotEqual(html, old);
        await using Tab tab = await browser.Open("about:blank");
        await tab.Page.RouteAsync("**/", route => route.FulfillAsync(new RouteFulfillOptions { Body = old, ContentType = "text/html" }));
        await tab.Page.RouteAsync("**/api/view", route => route.AbortAsync());
        await tab.Page.GotoAsync(shop.Url, new PageGotoOptions { WaitUntil = WaitUntilState.DOMContentLoaded });
        await Expect(tab.Field("word")).ToHaveTextAsync("Wait");
    }

    [BrowserFact]
    public async Task Page_OldWhenOpened_SaysThatItIsOld()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        string html = await new HttpClient().GetStringAsync(new Uri(shop.Url));
        foreach ((int seconds, string link) in new[] { (7, "late"), (17, "lost") })
        {
            // Sent some seconds ago, by a clock that both share; no stream answers.
            await using Tab tab = await browser.Open("about:blank");
            await tab.Page.RouteAsync("**/", route => route.FulfillAsync(new RouteFulfillOptions
            {
                Body = System.Text.RegularExpressions.Regex.Replace(
                    html, "data-sent=\"\\d+\"", $"data-sent=\"{TimeProvider.System.GetUtcNow().AddSeconds(-seconds).ToUnixTimeMilliseconds()}\""),
                ContentType = "text/html",
            }));
            await tab.Page.RouteAsync("**/api/view", route => route.AbortAsync());
            await tab.Page.GotoAsync(shop.Url, new PageGotoOptions { WaitUntil = WaitUntilState.DOMContentLoaded });
            await tab.Page.Locator($"html[data-link={link}]").WaitForAsync();
            await Expect(tab.Page.GetByRole(AriaRole.Alert).First).ToBeVisibleAsync();
        }
    }

    [BrowserFact]
    public async Task Event_ThatLayInABufferWhileTheDeviceSlept_IsNoNews()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url);
        await Live(tab);
        await tab.Page.RouteAsync("**/api/view", route => route.AbortAsync());

        // A minute later by one clock, the other stood still; the browser hands over what came before the sleep, before any timer runs.
        foreach (string clock in new[] { "performance", "Date" })
        {
            string link = await tab.Page.EvaluateAsync<string>(
                "clock => { heldUpS(first.sentS); const o = window[clock], real = o.now.bind(o); o.now = () => real() + 60000;"
                + " source.dispatchEvent(new MessageEvent('view', { data: JSON.stringify({ ...first, sentS: first.sentS + 0.1 }) })); o.now = real; return document.documentElement.dataset.link; }",
                clock);
            Assert.Equal("lost", link);
            Assert.Equal("wait", await tab.Verdict());
        }
    }

    [BrowserFact]
    public async Task Clock_OfThePhone_WrongByHours_DoesNotKeepThePageFromTheVerdict()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        foreach (int hours in new[] { -3, 3 })
        {
            await using Tab tab = await browser.Open("about:blank");
            await shop.Show(Samples.Spray);
            await tab.Page.AddInitScriptAsync($"{{ const real = Date.now.bind(Date); Date.now = () => real() + {hours} * 3600000; }}");
            await tab.Page.GotoAsync(shop.Url, new PageGotoOptions { WaitUntil = WaitUntilState.DOMContentLoaded });
            await Live(tab);
            await Expect(tab.Field("word")).ToHaveTextAsync("Spray");
        }
    }

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Page_WithoutScript_SaysWait(int width, int height)
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url, width, height, script: false);
        await Expect(tab.Field("word")).ToHaveTextAsync("Wait");
        Assert.Equal("wait", await tab.Verdict());
        Assert.DoesNotContain("Spray", await tab.Page.Locator(".verdict").InnerTextAsync(), StringComparison.OrdinalIgnoreCase);
        await Expect(tab.Page.GetByText("The script of this page does not run")).ToBeVisibleAsync();
        await Expect(tab.Field("temperature")).ToHaveTextAsync("22.4\u00a0°C");
    }

    [BrowserTheory]
    [InlineData("**/page.js", "")]
    [InlineData("**/page.js", "throw new Error('at once');")]
    public async Task Page_WhoseScriptFails_SaysWaitAndWhy(string address, string script)
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open("about:blank");
        await tab.Page.RouteAsync(address, route => route.FulfillAsync(new RouteFulfillOptions { Body = script, ContentType = "text/javascript" }));
        await tab.Page.GotoAsync(shop.Url, new PageGotoOptions { WaitUntil = WaitUntilState.DOMContentLoaded });
        await Expect(tab.Field("word")).ToHaveTextAsync("Wait");
        await Expect(tab.Page.GetByText("The script of this page does not run")).ToBeVisibleAsync();
    }

    [BrowserFact]
    public async Task Curtain_WhenNothingRenewsThePulse_CoversTheVerdict()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url);
        await Live(tab);
        ILocator curtain = tab.Page.Locator(".curtain");
        await Expect(curtain).ToBeHiddenAsync();
        // The script dies: no timer runs and no event comes. Ten seconds of the style sheet's own clock, without waiting for them.
        await tab.Page.EvaluateAsync("source.close(); for (let i = 0; i < 10000; i++) { clearInterval(i); }");
        await tab.Page.EvaluateAsync("document.getAnimations().forEach(a => { a.currentTime = 10002; })");
        await Expect(curtain).ToBeVisibleAsync();
    }

    private static async Task AdvanceUntil(FakeTimeProvider time, int mostTimes, Task done)
    {
        for (int i = 0; i < mostTimes && !done.IsCompleted; i++)
        {
            time.Advance(TimeSpan.FromSeconds(2));
            await Task.WhenAny(done, Task.Delay(TimeSpan.FromMilliseconds(500), TimeProvider.System));
        }

        await done;
    }

    private static Task Live(Tab tab) => tab.Page.Locator("html[data-link=live]").WaitForAsync();
}
