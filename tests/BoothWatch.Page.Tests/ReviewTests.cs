using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Tests.Jobs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>The review of a coat in a real browser. Set PAGE_TESTS_SCREENSHOTS to a folder to keep pictures for a person to look at.</summary>
[Collection(BrowserTests.Name)]
public sealed class ReviewTests(Browser browser)
{
    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Review_OfTheDemosCoats_FitsReadsAndIsAccessible(int width, int height)
    {
        await using JobHost host = await JobHost.Start(("jobs:demoPast", "true"));
        host.Services.GetServices<IHostedService>().OfType<DemoPast>().Single().Create(CancellationToken.None);
        JobStore store = host.Services.GetRequiredService<JobStore>();
        CoatRow blushed = Assert.Single(store.Coats(new CoatQuery { Outcome = CoatOutcome.Blushed }).Rows);
        foreach ((string name, CoatRow coat) in new[]
        {
            ("blushed", blushed),
            ("soft", store.Coats(new CoatQuery { Outcome = CoatOutcome.Soft }).Rows[0]),
            ("orange-peel", store.Coats(new CoatQuery { Outcome = CoatOutcome.OrangePeel }).Rows[0]),
            ("clear", store.Coats(new CoatQuery { Outcome = CoatOutcome.Clear }).Rows[0]),
        })
        {
            await using Tab tab = await browser.Open($"{host.Url}/coats/{coat.Id}/review", width, height);
            await Assertions.Expect(tab.Page.Locator("#headline")).Not.ToBeEmptyAsync();
            await tab.Page.EvaluateAsync("Promise.all([...document.querySelectorAll('img.chart[src]')].map(image => image.decode()))");
            Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
            AxeResult result = await tab.Page.RunAxe();
            Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
            await Pictures.Keep(tab, $"review-{name}-{width}");
            Assert.Empty(tab.Complaints);
        }
    }

    [BrowserFact]
    public async Task Outcome_ByATapOnTheReview_IsKeptAndTheReviewFollows()
    {
        await using JobHost host = await JobHost.Start(("jobs:demoPast", "true"));
        host.Services.GetServices<IHostedService>().OfType<DemoPast>().Single().Create(CancellationToken.None);
        JobStore store = host.Services.GetRequiredService<JobStore>();
        CoatRow open = store.Coats(new CoatQuery()).Rows.First(coat => coat.Outcome is null);
        await using Tab tab = await browser.Open(host.Url, 390, 844);
        await tab.SignIn(host.SignInLink, $"{host.Url}/jobs?id={open.JobId}");
        await tab.Page.Locator($"a[href='/coats/{open.Id}/review']").ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#headline")).ToContainTextAsync("Nobody has said");

        ILocator runs = tab.Page.GetByRole(AriaRole.Button, new() { Name = "runs" });
        Assert.True((await runs.BoundingBoxAsync())!.Height >= 44, "the button is too small for a glove");
        await tab.Page.GetByLabel("Note").FillAsync("one run on the <edge>");
        await runs.ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#headline")).ToContainTextAsync("says nothing on runs");
        await Assertions.Expect(runs).ToHaveAttributeAsync("aria-pressed", "true");
        await Assertions.Expect(tab.Page.Locator("#about")).ToContainTextAsync("one run on the <edge>");
        JobCoat kept = store.FindByCoat(open.Id)!.Coats.Single(coat => coat.Id == open.Id);
        Assert.Equal(CoatOutcome.Runs, kept.Outcome);
        Assert.Equal("one run on the <edge>", kept.OutcomeNote);
        await Assertions.Expect(tab.Page.Locator("footer")).ToContainTextAsync("No gas detector");
        Assert.Empty(tab.Complaints);
    }
}
