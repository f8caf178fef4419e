using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.Sht4x;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Setup;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>The setup page in a real browser, over the whole service on a copy of the shipped configuration.</summary>
[Collection(BrowserTests.Name)]
public sealed class SetupTests(Browser browser) : IDisposable
{
    private readonly ConfigFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [BrowserTheory]
    [InlineData(390, 844, ColorScheme.Dark)]
    [InlineData(1280, 800, ColorScheme.Light)]
    public async Task Page_SetsUpABooth_FitsAGlovedFingerAndIsAccessible(int width, int height, ColorScheme scheme)
    {
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, ("mqtt:use", "off"));
        host.Services.GetRequiredService<I2cBusSource>().Emulated(1).Attach(0x45, new EmulatedSht4x(() => new AirSignal(21, 50, 101_300), TimeProvider.System, 1));
        await using Tab tab = await SignedIn(host, width, height, scheme);
        IPage page = tab.Page;
        await Expect(page.Locator("#steps li")).ToHaveCountAsync(5);
        await Expect(page.Locator("#filePath")).ToHaveTextAsync(_folder.JsonPath);
        await Expect(page.GetByLabel("Shop")).ToHaveValueAsync("Harbour Lane");
        await Pictures.Keep(tab, $"setup-{width}-first");

        await page.GetByRole(AriaRole.Button, new() { Name = "Look for sensors" }).ClickAsync();
        await Expect(page.Locator("#scanOutcome")).ToContainTextAsync("1 not configured yet; 5 other places are silent.");
        await Expect(page.Locator("#found code")).ToHaveTextAsync("\"boothAirCheck\": { \"part\": \"sht4x\", \"source\": \"emulated\", \"bus\": 1, \"address\": \"0x45\" },");

        // Refused with the words of the check, then written.
        await page.GetByLabel("Height above sea level, m").FillAsync("9000");
        await page.GetByLabel("Booth", new() { Exact = true }).FillAsync("north");
        await page.Locator("#booth").GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator("#booth [role=alert]")).ToContainTextAsync("booth:altitudeM is 9000; give a height from -430 to 5000 m");
        await Pictures.Keep(tab, $"setup-{width}-refused");
        await IsAccessible(page);
        await page.GetByLabel("Height above sea level, m").FillAsync("120");
        await page.Locator("#booth").GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator("#booth [role=status]")).ToContainTextAsync("It takes effect at the next start");
        await Expect(page.Locator("#restart")).ToContainTextAsync("booth:name, booth:altitudeM");
        await page.Locator("[data-key='coat:kind']").SelectOptionAsync("flash");
        await page.GetByLabel("Most retarder, %, by the can").FillAsync("12,5");
        await page.Locator("#materials").GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator("#materials [role=status]")).ToContainTextAsync("It takes effect at the next start");
        Assert.Contains("\"name\": \"north\",", _folder.Text, StringComparison.Ordinal);
        Assert.Contains("\"kind\": \"flash\",", _folder.Text, StringComparison.Ordinal);
        Assert.Contains("\"retarderHighestPct\": 12.5,", _folder.Text, StringComparison.Ordinal);
        await Expect(page.Locator("#steps li[data-done=true]")).ToHaveCountAsync(2);
        await Expect(page.Locator("#lamps li")).ToHaveCountAsync(3);
        await Expect(page.Locator("#channels li")).ToHaveCountAsync(4);
        await Expect(page.Locator("#undoText")).ToContainTextAsync("coat:kind from flash to clear; coat:retarderHighestPct from 12.5 to (not set)");

        foreach (ILocator part in await page.Locator("main button, main input, main select").AllAsync())
        {
            LocatorBoundingBoxResult box = (await part.BoundingBoxAsync())!;
            Assert.True(box.Height >= 56 && box.Width >= 56, $"{await part.EvaluateAsync<string>("e => e.outerHTML")} is {box.Width:0} by {box.Height:0} px");
        }

        await Pictures.Keep(tab, $"setup-{width}-done");
        Assert.False(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        await IsAccessible(page);

        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.Locator("#undoText")).ToContainTextAsync("booth:altitudeM from 120 to 0; booth:name from north to corner");
        Assert.DoesNotContain("\"kind\": \"flash\",", _folder.Text, StringComparison.Ordinal);

        // The console names the one refusal that the wrong height got, and nothing of the content policy.
        Assert.Contains("400", Assert.Single(tab.Complaints), StringComparison.Ordinal);
    }

    [BrowserFact]
    public async Task Keyboard_Alone_RenamesTheBooth_LooksForSensors_AndUndoes()
    {
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, ("mqtt:use", "off"));
        string before = _folder.Text;
        await using Tab tab = await SignedIn(host, 1280, 800, ColorScheme.Dark);
        IPage page = tab.Page;
        await Expect(page.GetByLabel("Shop")).ToHaveValueAsync("Harbour Lane");
        await TabTo(page, page.GetByRole(AriaRole.Button, new() { Name = "Look for sensors" }));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#found li")).ToHaveCountAsync(4);
        await TabTo(page, page.GetByLabel("Booth", new() { Exact = true }));
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("yard");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#booth [role=status]")).ToContainTextAsync("It takes effect at the next start");
        Assert.Equal(before.Replace("\"corner\",", "\"yard\",", StringComparison.Ordinal), _folder.Text);
        await TabTo(page, page.GetByRole(AriaRole.Button, new() { Name = "Undo" }));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#fileOutcome")).ToContainTextAsync("The earlier version is back");
        Assert.Equal(before, _folder.Text);
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Change_WithoutASession_LeadsToTheSignIn_AndWritesNothing()
    {
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, ("mqtt:use", "off"));
        string before = _folder.Text;
        await using Tab tab = await browser.Open(host.Url + "/setup", 390, 844);
        await Expect(tab.Page.GetByLabel("Shop")).ToHaveValueAsync("Harbour Lane");
        await tab.Page.GetByLabel("Shop").FillAsync("North Yard");
        await tab.Page.Locator("#booth").GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await tab.Page.WaitForURLAsync("**/sign-in?next=%2Fsetup");
        Assert.Equal(before, _folder.Text);
    }

    private async Task<Tab> SignedIn(JobHost host, int width, int height, ColorScheme scheme)
    {
        Tab tab = await browser.Open("about:blank", width, height);
        await tab.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
        await tab.Page.GotoAsync(host.SignInLink.Replace("/sign-in", "/sign-in?next=%2Fsetup", StringComparison.Ordinal));
        await tab.Page.WaitForURLAsync("**/setup", new() { WaitUntil = WaitUntilState.DOMContentLoaded });
        return tab;
    }

    private static async Task IsAccessible(IPage page)
    {
        AxeResult result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
    }

    /// <summary>Presses Tab until the element has the focus.</summary>
    private static async Task TabTo(IPage page, ILocator element)
    {
        for (int i = 0; i < 80; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await element.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                return;
            }
        }

        Assert.Fail($"{element} is not reached with the Tab key");
    }
}
