using BoothWatch.Jobs;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Limits;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>The page of the shop's own limit in a real browser. Set PAGE_TESTS_SCREENSHOTS to a folder to keep pictures.</summary>
[Collection(BrowserTests.Name)]
public sealed class LimitTests(Browser browser)
{
    [BrowserTheory]
    [InlineData(390, 844, "true")]
    [InlineData(1280, 800, "true")]
    [InlineData(1280, 800, "false")]
    public async Task Limit_OfAShop_IsSaidDrawnAndFits(int width, int height, string enabled)
    {
        await using JobHost host = await JobHost.Start(("limit:enabled", enabled));
        (int Count, double MarginC, CoatOutcome Outcome)[] past =
        [
            (3, 0.3, CoatOutcome.Blushed), (2, 1.1, CoatOutcome.Blushed), (1, -0.8, CoatOutcome.Blushed), (2, 0.9, CoatOutcome.Clear), (4, 1.6, CoatOutcome.OrangePeel),
            (9, 2.3, CoatOutcome.Clear), (14, 3.0, CoatOutcome.Clear), (7, 4.4, CoatOutcome.Clear), (3, 6.1, CoatOutcome.Runs), (2, 2.6, CoatOutcome.DrySpray),
        ];
        foreach ((int count, double margin, CoatOutcome outcome) in past)
        {
            LimitSample.Enter(host, count, margin, outcome);
        }

        await LimitSample.Known(host, 45);
        await using Tab tab = await browser.Open(host.Url + "/limit", width, height);
        await Assertions.Expect(tab.Page.Locator("#headline")).ToContainTextAsync(enabled == "true" ? "raised from 0.5" : "If it were on");
        await Assertions.Expect(tab.Page.Locator("#words")).ToContainTextAsync("It rests on 45 coats");
        await Assertions.Expect(tab.Page.Locator("#gates li")).ToHaveCountAsync(4);
        await Assertions.Expect(tab.Page.Locator("#coats li").First).ToContainTextAsync("margin of");
        await tab.Page.WaitForFunctionAsync("() => document.getElementById('limitChart').naturalWidth > 100");

        Assert.InRange(await tab.Page.EvaluateAsync<double>("(i => i.clientWidth / i.naturalWidth)(document.getElementById('limitChart'))"), 0.97, 1.03);
        Assert.InRange(await tab.Page.EvaluateAsync<double>("(i => i.clientHeight / i.naturalHeight)(document.getElementById('limitChart'))"), 0.97, 1.03);
        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
        if (Environment.GetEnvironmentVariable("PAGE_TESTS_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"limit-{width}-{enabled}.png"), FullPage = true });
        }

        Assert.Empty(tab.Complaints);
    }
}
