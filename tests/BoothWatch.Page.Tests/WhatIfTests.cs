using BoothWatch.Service.Tests.Jobs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>The page of what-if questions in a real browser, over the whole service.</summary>
[Collection(BrowserTests.Name)]
public sealed class WhatIfTests(Browser browser)
{
    private const string Damp = "/what-if?temperature=24C&humidity=90&coat=clear&wet-film=75";

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Slider_ChangesTheAnswer_AndTheLink(int width, int height)
    {
        await using JobHost host = await JobHost.Start();
        await using Tab tab = await browser.Open(host.Url + Damp, width, height);
        ILocator word = tab.Page.Locator("#word");
        await Assertions.Expect(tab.Page.Locator("#answer[aria-busy=false][data-verdict=wait]")).ToBeVisibleAsync();
        await Assertions.Expect(tab.Page.Locator("#retarder")).ToHaveTextAsync("none serves");

        await tab.Page.GetByLabel("Humidity").FillAsync("40");
        await Assertions.Expect(word).ToHaveTextAsync("spray");
        await Assertions.Expect(tab.Page.Locator("#humidityOut")).ToHaveTextAsync("40 %");
        Assert.Contains("humidity=40", tab.Page.Url, StringComparison.Ordinal);

        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
        Assert.Empty(tab.Complaints);
        await Pictures.Keep(tab, $"what-if-{width}");
    }

    [BrowserFact]
    public async Task Link_OpensTheSameQuestion()
    {
        await using JobHost host = await JobHost.Start(("booth:temperatureUnit", "F"));
        await using Tab first = await browser.Open(host.Url + Damp);
        await first.Page.GetByLabel("Kind").SelectOptionAsync("flash");
        await first.Page.GetByLabel("retarder as advised").UncheckAsync();
        await first.Page.GetByLabel("Retarder in the cup").FillAsync("7.5");
        await first.Page.Locator("#answer[aria-busy=false]").WaitForAsync();
        string link = await first.Page.Locator("#link").InputValueAsync();

        await using Tab second = await browser.Open(link);
        await second.Page.Locator("#answer[aria-busy=false]").WaitForAsync();

        Assert.Equal(link, await second.Page.Locator("#link").InputValueAsync());
        foreach (string id in new[] { "#word", "#finding", "#retarder", "#margin", "#temperatureOut", "#retarderOut", "#thinnerOut", "#wetFilmOut" })
        {
            Assert.Equal(await first.Page.Locator(id).TextContentAsync(), await second.Page.Locator(id).TextContentAsync());
        }

        await Assertions.Expect(second.Page.Locator("#temperatureOut")).ToHaveTextAsync("75 °F");
        await Assertions.Expect(second.Page.Locator("#retarderOut")).ToHaveTextAsync("7.5 %");
    }

    [BrowserFact]
    public async Task Keyboard_Alone_MovesTheSliders()
    {
        await using JobHost host = await JobHost.Start();
        await using Tab tab = await browser.Open(host.Url + "/what-if?temperature=20C&humidity=50");
        await tab.Page.Locator("#answer[aria-busy=false]").WaitForAsync();
        await tab.Page.GetByLabel("Temperature").FocusAsync();
        await tab.Page.Keyboard.PressAsync("ArrowRight");
        await tab.Page.Keyboard.PressAsync("Tab");
        await tab.Page.Keyboard.PressAsync("ArrowLeft");

        await Assertions.Expect(tab.Page.Locator("#temperatureOut")).ToHaveTextAsync("20.5 °C");
        await Assertions.Expect(tab.Page.Locator("#humidityOut")).ToHaveTextAsync("49 %");
    }

    [BrowserFact]
    public async Task DeadService_IsSaid_AndTheAnswerIsWait()
    {
        JobHost host = await JobHost.Start();
        await using Tab tab = await browser.Open(host.Url + "/what-if?temperature=22C&humidity=40&coat=clear");
        await Assertions.Expect(tab.Page.Locator("#word")).ToHaveTextAsync("spray");
        await host.DisposeAsync();

        await tab.Page.GetByLabel("Humidity").FillAsync("41");

        await Assertions.Expect(tab.Page.Locator("#word")).ToHaveTextAsync("wait");
        await Assertions.Expect(tab.Page.Locator("#notice")).ToContainTextAsync("does not answer");
    }
}
