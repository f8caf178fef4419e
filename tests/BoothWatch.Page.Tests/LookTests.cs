using BoothWatch.Verdicts;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>How the page looks. Set BOOTHWATCH_SCREENSHOTS to a folder to keep pictures for a person to look at.</summary>
[Collection(BrowserTests.Name)]
public sealed class LookTests(Browser browser)
{
    public static TheoryData<string, int, int> EveryVerdictAndSize
    {
        get
        {
            TheoryData<string, int, int> data = [];
            foreach (string verdict in new[] { "spray", "slow-down", "wait", "blind" })
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
        await shop.Show(Sample(name));
        await using Tab tab = await browser.Open(shop.Url, width, height);
        await tab.Page.Locator("html[data-link=live] #chart[src*='n=']").WaitForAsync();

        string key = name == "blind" ? "wait" : name;
        Assert.Equal(key, await tab.Verdict());
        Assert.Equal(key.Replace('-', ' '), (await tab.Field("word").InnerTextAsync()).ToLowerInvariant());
        Assert.Equal([key], await tab.Page.EvaluateAsync<string[]>(
            "[...document.querySelectorAll('.sign .shape')].filter(s => getComputedStyle(s).display !== 'none').map(s => s.classList[1])"));

        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        Assert.Equal("[]", await tab.Page.EvaluateAsync<string>(
            "JSON.stringify([...document.querySelectorAll('p, dd, dt, h1, h2, li')].filter(e => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0).map(e => e.textContent))"));
        await Keep(tab, $"{name}-{width}");
        Assert.Empty(tab.Complaints);
    }

    private static Assessment Sample(string name) => name switch
    {
        "spray" => Samples.Spray,
        "slow-down" => Samples.SlowDown,
        "blind" => Samples.Blind,
        _ => Samples.Wait,
    };

    private static async Task Keep(Tab tab, string name)
    {
        if (Environment.GetEnvironmentVariable("BOOTHWATCH_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png") });
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + "-full.png"), FullPage = true });
        }
    }
}
