using System.Text.RegularExpressions;
using BoothWatch.Checks;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Sht4x;
using BoothWatch.Service.Tests.Jobs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>
/// The journey of a sensor into jars of salt and back, in a real browser over the whole service. The chip is emulated at its registers and carried into
/// an emulated jar; only the times of settling are shorter than in a shop.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed class ChecksTests(Browser browser)
{
    private const float Patience = 60_000;

    private static readonly SettlingLimits Quick = new(TimeSpan.FromSeconds(5), TimeSpan.FromSeconds(3), 0.5, 0.3, TimeSpan.FromSeconds(20));

    private readonly EmulatedJar _jar = new() { OffPct = 1.5 };

    [BrowserTheory]
    [InlineData(390, 844, ColorScheme.Dark)]
    [InlineData(1280, 800, ColorScheme.Light)]
    public async Task Sensor_IsCheckedOverTwoSalts_AndCountsAgainOnceItIsBack(int width, int height, ColorScheme scheme)
    {
        await using JobHost host = await Start();
        await using Tab tab = await SignedIn(host, width, height, scheme);
        IPage page = tab.Page;
        ILocator card = Card(page);
        await Expect(card.Locator("[data-part=headline]")).ToHaveTextAsync("No check on record");
        await Pictures.Keep(tab, $"checks-{width}-first");
        await IsAccessible(page);

        await Button(card, "Begin a check").ClickAsync();
        await Expect(card.Locator("[data-part=held]")).ToContainTextAsync("the verdict is wait where this sensor counts");
        await Pictures.Keep(tab, $"checks-{width}-begun");
        await IsAccessible(page);
        await Fits(page);

        // From here on the glance says wait, whatever the jar gives.
        await using (Tab glance = await browser.Open(host.Url + "/", width, height))
        {
            await Expect(glance.Field("finding")).ToContainTextAsync("being checked against a salt point", new() { Timeout = Patience });
            await Expect(glance.Field("word")).ToHaveTextAsync("Wait");
            await Expect(glance.Page.Locator("#sensors li").First).ToContainTextAsync("being checked");
            await Pictures.Keep(glance, $"checks-{width}-glance");
        }

        _jar.Put(SaltPoint.SodiumChloride);
        await Button(card, "It hangs in the jar, the lid is closed").ClickAsync();
        await Expect(card.Locator("[data-part=settling]")).ToContainTextAsync("Not settled yet:");
        await Expect(Button(card, "Take the result")).ToBeDisabledAsync();
        await Expect(card.Locator("[data-part=reference]")).ToHaveTextAsync("75.4 %");
        await Pictures.Keep(tab, $"checks-{width}-settling");
        await Expect(Button(card, "Take the result")).ToBeEnabledAsync(new() { Timeout = Patience });
        await Pictures.Keep(tab, $"checks-{width}-settled");
        await Button(card, "Take the result").ClickAsync();
        await Expect(card.Locator("[data-part=last] li")).ToHaveCountAsync(1);
        await Expect(card.Locator("[data-part=last] b")).ToHaveTextAsync(new Regex(@"^\+1\.[456] %$"));

        await card.Locator("label", new() { HasText = "Magnesium chloride" }).ClickAsync();
        _jar.Put(SaltPoint.MagnesiumChloride);
        await Button(card, "It hangs in the jar, the lid is closed").ClickAsync();
        await Expect(card.Locator("[data-part=reference]")).ToHaveTextAsync("32.9 %");
        await Expect(Button(card, "Take the result")).ToBeEnabledAsync(new() { Timeout = Patience });
        await Button(card, "Take the result").ClickAsync();
        await Expect(card.Locator("[data-part=last] li")).ToHaveCountAsync(2);
        await Expect(card.Locator("[data-part=words]")).ToContainTextAsync(new Regex(@"Both salts together: \+1\.[456] % ± 0\.\d % at 50 %"));
        await Pictures.Keep(tab, $"checks-{width}-results");
        await IsAccessible(page);

        // Said too early: it still hangs in the jar.
        await Button(card, "It hangs in its place again", exact: true).ClickAsync();
        await Expect(card.Locator("[data-part=certainStep]")).ToContainTextAsync("It still reads what the jar gives", new() { Timeout = Patience });
        await Pictures.Keep(tab, $"checks-{width}-as-in-jar");
        await IsAccessible(page);
        _jar.Put(null);
        await Expect(Button(card, "Begin a check")).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(card.Locator("[data-part=outcome]")).ToHaveAttributeAsync("data-outcome", "within");
        await Expect(card.Locator("[data-part=headline]")).ToContainTextAsync("within tolerance");
        await card.GetByText("Past checks").ClickAsync();
        await Expect(card.Locator("[data-part=past] li")).ToHaveCountAsync(1);
        await Fits(page);
        await Pictures.Keep(tab, $"checks-{width}-done");
        await IsAccessible(page);
        await using (Tab glance = await browser.Open(host.Url + "/", width, height))
        {
            await Expect(glance.Page.Locator("#sensors li").First).ToContainTextAsync("good");
        }

        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Sensor_OutOfTolerance_IsNamed_KeepsTheVerdictAtWait_AndIsReplaced()
    {
        _jar.OffPct = 8;
        await using JobHost host = await Start();
        await using Tab tab = await SignedIn(host, 390, 844, ColorScheme.Dark);
        ILocator card = Card(tab.Page);
        await Button(card, "Begin a check").ClickAsync();
        _jar.Put(SaltPoint.SodiumChloride);
        await Button(card, "It hangs in the jar, the lid is closed").ClickAsync();
        await Button(card, "Take the result").ClickAsync();
        _jar.Put(null);
        await Button(card, "It hangs in its place again", exact: true).ClickAsync();
        await Expect(Button(card, "Begin a check")).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(card.Locator("[data-part=headline]")).ToHaveTextAsync("Out of tolerance: replace it, or check it again");
        await Pictures.Keep(tab, "checks-390-failed");
        await IsAccessible(tab.Page);
        await using (Tab glance = await browser.Open(host.Url + "/", 390, 844))
        {
            await Expect(glance.Field("finding")).ToContainTextAsync("out of tolerance over a salt point", new() { Timeout = Patience });
            await Expect(glance.Field("word")).ToHaveTextAsync("Wait");
            await Pictures.Keep(glance, "checks-390-failed-glance");
        }

        await card.GetByText("A new part was fitted").ClickAsync();
        await Button(card, "It was replaced: begin anew").ClickAsync();
        await Expect(card.Locator("[data-part=headline]")).ToContainTextAsync("not checked yet");
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Keyboard_Alone_LeadsThroughACheck()
    {
        await using JobHost host = await Start();
        await using Tab tab = await SignedIn(host, 1280, 800, ColorScheme.Dark);
        IPage page = tab.Page;
        ILocator card = Card(page);
        await Expect(Button(card, "Begin a check")).ToBeVisibleAsync(new() { Timeout = Patience });
        await TabTo(page, Button(card, "Begin a check"));
        await page.Keyboard.PressAsync("Enter");
        await Expect(Button(card, "It hangs in the jar, the lid is closed")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Shift+Tab");
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(card.Locator("input[value=potassium-chloride]")).ToBeCheckedAsync();
        _jar.Put(SaltPoint.PotassiumChloride);
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        await Expect(Button(card, "Take the result")).ToBeEnabledAsync(new() { Timeout = Patience });
        await TabTo(page, Button(card, "Take the result"));
        await page.Keyboard.PressAsync("Enter");
        await Expect(card.Locator("[data-part=last]")).ToContainTextAsync("potassium chloride");
        await TabTo(page, Button(card, "It hangs in its place again", exact: true));
        _jar.Put(null);
        await page.Keyboard.PressAsync("Enter");
        await Expect(Button(card, "Begin a check")).ToBeVisibleAsync(new() { Timeout = Patience });
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Begin_WithoutASession_LeadsToTheSignIn_AndHoldsNothing()
    {
        await using JobHost host = await Start();
        await using Tab tab = await browser.Open(host.Url + "/checks", 390, 844);
        await Button(Card(tab.Page), "Begin a check").ClickAsync();
        await tab.Page.WaitForURLAsync("**/sign-in?next=%2Fchecks");
        Assert.Equal(System.Text.Json.JsonValueKind.Null, (await host.Get("/api/checks")).GetProperty("sensors")[0].GetProperty("running").ValueKind);
    }

    private async Task<JobHost> Start()
    {
        JobHost host = await JobHost.StartWith(
            services => services.AddSingleton(new CheckLimits(Quick, Quick with { HumidityPct = 1.5 }, Quick with { HumidityPct = 1.5 }, 0.2)), ("mqtt:use", "off"));
        host.Services.GetRequiredService<I2cBusSource>().Emulated(1).Attach(Sht4xSensor.DefaultAddress, new EmulatedSht4x(() => _jar.Air, TimeProvider.System, 1));
        return host;
    }

    private async Task<Tab> SignedIn(JobHost host, int width, int height, ColorScheme scheme)
    {
        Tab tab = await browser.Open("about:blank", width, height);
        await tab.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
        await tab.SignIn(host.SignInLink, host.Url + "/checks");
        return tab;
    }

    private static ILocator Card(IPage page) => page.Locator("[data-sensor=boothAir]");

    private static ILocator Button(ILocator card, string name, bool exact = false) => card.GetByRole(AriaRole.Button, new() { Name = name, Exact = exact });

    private static async Task Fits(IPage page)
    {
        Assert.False(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        foreach (ILocator part in await page.Locator("main button:visible, main .salts label:visible").AllAsync())
        {
            LocatorBoundingBoxResult box = (await part.BoundingBoxAsync())!;
            Assert.True(box.Height >= 56 && box.Width >= 56, $"{await part.EvaluateAsync<string>("e => e.outerHTML")} is {box.Width:0} by {box.Height:0} px");
        }
    }

    private static async Task IsAccessible(IPage page)
    {
        AxeResult result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
    }

    private static async Task TabTo(IPage page, ILocator element)
    {
        for (int i = 0; i < 80; i++)
        {
            if (await element.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"{element} is not reached with the Tab key");
    }
}
