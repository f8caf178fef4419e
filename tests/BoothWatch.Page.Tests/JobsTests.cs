using BoothWatch.Service.Tests.Jobs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>The page of jobs in a real browser, over the whole service.</summary>
[Collection(BrowserTests.Name)]
public sealed class JobsTests(Browser browser)
{
    [BrowserFact]
    public async Task Coat_ByTaps_IsMarkedStoppedJudgedAndUndone()
    {
        await using JobHost host = await JobHost.Start();
        await using Tab tab = await browser.Open(host.Url, 390, 844);
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
}
