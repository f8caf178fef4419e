using System.Text.Json;
using System.Text.RegularExpressions;
using BoothWatch.Service;
using BoothWatch.Service.Access;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Tests.Page;
using BoothWatch.Verdicts;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>Bringing the piece in: is it warm enough not to draw dew, and how long does it take to warm?</summary>
[Collection(BrowserTests.Name)]
public sealed partial class WarmingTests(Browser browser) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-warming-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>The scripted morning through the whole service: the emulated infrared sensor sees a piece at 9 °C, which takes half an hour of the shop.</summary>
    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Piece_BroughtInCold_ShowsTheMinutesAndThenThatItIsWarm(int width, int height)
    {
        await using WebApplication booth = await StartBooth();
        string url = booth.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        await using Tab tab = await browser.Open(url, width, height);
        await tab.Page.Locator("html[data-link=live]").WaitForAsync();
        ILocator tile = tab.Page.GetByRole(AriaRole.Region, new() { Name = "The piece" });
        await Expect(tile).ToBeVisibleAsync();
        await Expect(tab.Field("warm")).ToHaveTextAsync(Minutes());
        await Expect(tab.Field("warmMeaning")).ToHaveTextAsync(Meaning());
        await Expect(tab.Field("warmBasis")).ToHaveTextAsync("By the model, until it has been watched for long enough.");
        await Expect(tab.Field("warmHeard")).ToHaveTextAsync("The piece is too cold.");
        await Expect(tab.Field("word")).ToHaveTextAsync("Wait");
        using HttpClient http = new();
        JsonElement warming = JsonDocument.Parse(await http.GetStringAsync(new Uri(url + "/api/now"))).RootElement.GetProperty("warming");
        Assert.Equal("warming", warming.GetProperty("state").GetString());
        Assert.InRange(warming.GetProperty("leftS").GetDouble(), 60, 3600);

        // Its own trail takes over, and then it is warm; a screen reader hears of it.
        LocatorAssertionsToHaveTextOptions patient = new() { Timeout = 40_000 };
        await Expect(tab.Field("warmBasis")).ToHaveTextAsync("By how it has warmed in the last minutes.", patient);
        await Expect(tab.Field("warmHeard")).ToHaveTextAsync("The piece is warm enough now.", patient);
        await Expect(tab.Page.Locator(".heard")).ToHaveAttributeAsync("role", "status");
        Assert.Empty(tab.Complaints);
        await booth.StopAsync();
    }

    [BrowserTheory]
    [InlineData(390, 844, ColorScheme.Dark)]
    [InlineData(1280, 800, ColorScheme.Dark)]
    [InlineData(1280, 800, ColorScheme.Light)]
    public async Task Tile_AtPhoneAndTabletSize_SaysWhenWhereAndHowSure(int width, int height, ColorScheme scheme)
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        await shop.Show(Samples.Cold);
        await using Tab tab = await browser.Open("about:blank", width, height);

        // Without motion, so that no colour is looked at on its way from red to green.
        await tab.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
        await tab.Page.GotoAsync(shop.Url);
        await tab.Page.Locator(".past[data-drawn]").WaitForAsync();

        // The shop's clock of the sample is at 13:40.
        await Expect(tab.Field("warm")).ToHaveTextAsync("25\u00a0min");
        await Expect(tab.Field("warmMeaning")).ToHaveTextAsync(
            "until it has 16.0\u00a0°C, at about 14:05 (15 to 40\u00a0min), if the air stays as it is");
        await Expect(tab.Field("warmBasis")).ToHaveTextAsync("By the model, until it has been watched for long enough.");
        await Expect(tab.Field("warmCare")).ToContainTextAsync("Dew is falling on it: wipe it off");
        await Expect(tab.Field("warmCare")).ToContainTextAsync("not beside a heater or a flame");
        await Expect(tab.Field("pieceClear")).ToHaveTextAsync("0.6\u00a0°C under the dew point");
        await Picture(tab, $"warming-{width}-{scheme}");
        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));

        await shop.Show(Samples.JustWarm);
        await Expect(tab.Field("warm")).ToHaveTextAsync("Warm");
        await Expect(tab.Field("warmMeaning")).ToHaveTextAsync("the piece is warm enough, 8.2\u00a0°C over the dew point");
        await Picture(tab, $"warm-{width}-{scheme}");
        Assert.Empty((await tab.Page.RunAxe()).Violations.Select(v => v.Id));

        await shop.Show(Samples.Spray);
        await Expect(tab.Page.Locator("#warm")).ToBeHiddenAsync();
        Assert.Empty(tab.Complaints);
    }

    [BrowserTheory]
    [InlineData(WarmingState.NotWarming, "Not warming", "has not warmed in the last minutes")]
    [InlineData(WarmingState.AirTooCold, "Air too cold", "waiting here does not warm it")]
    [InlineData(WarmingState.Unknown, "Too cold", "nobody can say yet when")]
    public async Task Tile_WithoutATime_SaysWhy(WarmingState state, string mark, string meaning)
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Cold with
        {
            Warming = Samples.Cold.Warming! with { State = state, LeftS = null, LeastS = null, MostS = null, Basis = null, CoreColderC = null },
        });
        await using Tab tab = await browser.Open(shop.Url, 390, 844);
        await Expect(tab.Field("warm")).ToHaveTextAsync(mark);
        await Expect(tab.Field("warmMeaning")).ToContainTextAsync(meaning);
        await Picture(tab, $"warming-{state}");
    }

    /// <summary>Measured by hand and typed in: the time comes from the model, and the page says when to measure again.</summary>
    [BrowserFact]
    public async Task Piece_TypedIn_IsToldWhenToMeasureAgain()
    {
        await using WebApplication booth = await StartBooth(new
        {
            series = new { folder = _folder },
            mqtt = new { use = "off" },
            page = new { url = "http://127.0.0.1:0" },
            clock = new { requireSynchronised = false },
            demo = new { dayLengthS = 32400 },
            coat = new { substrate = "thick wood" },
            sensors = new { proving = true, piece = new { part = "typed" } },
        });
        string url = booth.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        await using Tab tab = await browser.Open("about:blank", 390, 844);
        await tab.SignIn($"{url}/sign-in#{booth.Services.GetRequiredService<StartCode>().Current}", url);
        await tab.Page.GetByLabel("Piece measured by hand, °C").FillAsync("6");
        await tab.Page.Keyboard.PressAsync("Enter");
        await Expect(tab.Field("warmBasis")).ToHaveTextAsync("By the model, from the value typed in: measure again then.", new() { Timeout = 30_000 });
        await Expect(tab.Field("warm")).ToHaveTextAsync(Minutes());
        await Expect(tab.Field("warmMeaning")).ToHaveTextAsync(Meaning());
        await Picture(tab, "warming-typed");

        // Measured again, warm: nothing is left of it.
        await tab.Page.GetByLabel("Piece measured by hand, °C").FillAsync("19");
        await tab.Page.Keyboard.PressAsync("Enter");
        await Expect(tab.Field("piece")).ToHaveTextAsync("19.0\u00a0°C", new() { Timeout = 30_000 });
        await Expect(tab.Field("warmBasis")).ToHaveTextAsync("");
        Assert.Empty(tab.Complaints);
        await booth.StopAsync();
    }

    /// <summary>The tile has nothing to press, so keys pass over it and what it says is not lost to who uses them alone.</summary>
    [BrowserFact]
    public async Task Keyboard_Alone_PassesOverTheTileToTheCups()
    {
        await using ShopPage shop = await ShopPage.Start();
        await shop.Show(Samples.Cold);
        await using Tab tab = await browser.Open(shop.Url, 1280, 800);
        await Expect(tab.Page.Locator("#warm")).ToBeVisibleAsync();
        Assert.Equal(0, await tab.Page.Locator("#warm :is(a, button, input, select, [tabindex])").CountAsync());
        for (int i = 0; i < 5; i++)
        {
            await tab.Page.Keyboard.PressAsync("Tab");
            if (await tab.Page.EvaluateAsync<bool>("document.activeElement.matches('.cups input')"))
            {
                return;
            }
        }

        Assert.Fail("five keys did not reach the cups");
    }

    private static async Task Picture(Tab tab, string name)
    {
        if (Environment.GetEnvironmentVariable("PAGE_TESTS_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"{name}.png") });
        }
    }

    private async Task<WebApplication> StartBooth(object? settings = null)
    {
        string path = Path.Combine(_folder, "boothwatch.json");
        await File.WriteAllTextAsync(path, JsonSerializer.Serialize(settings ?? new
        {
            series = new { folder = _folder },
            mqtt = new { use = "off" },
            page = new { url = "http://127.0.0.1:0" },
        }));
        WebApplication booth = BoothHost.Build(ConfigurationFile.Read(path));
        await booth.StartAsync();
        return booth;
    }

    [GeneratedRegex(@"^\d+\u00a0min$")]
    private static partial Regex Minutes();

    [GeneratedRegex(@"^until it has 1\d\.\d\u00a0°C, at about 8:\d\d \(.*min\), if the air stays as it is$")]
    private static partial Regex Meaning();
}
