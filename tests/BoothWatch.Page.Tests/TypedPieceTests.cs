using System.Text.Json;
using BoothWatch.Service;
using BoothWatch.Service.Access;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Tests.Page;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>A piece temperature typed on the page of the whole service, in a shop that reads °F.</summary>
[Collection(BrowserTests.Name)]
public sealed class TypedPieceTests(Browser browser) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-typed-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [BrowserFact]
    public async Task Value_TypedOnThePage_GoesThroughTheServiceAndIsSeenOnThePage()
    {
        await using WebApplication booth = await StartBooth();
        string url = booth.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        await using Tab tab = await browser.Open(url);
        await tab.SignIn($"{url}/sign-in#{booth.Services.GetRequiredService<StartCode>().Current}", url);
        await tab.Page.Locator("html[data-link=live]").WaitForAsync();
        await Expect(tab.Field("piece")).ToHaveTextAsync("–");
        await Expect(tab.Field("pieceTyped")).ToHaveTextAsync("not typed in yet");

        ILocator number = tab.Page.GetByLabel("Piece measured by hand, °F");
        ILocator button = tab.Page.GetByRole(AriaRole.Button, new() { Name = "Set" });
        await number.FillAsync("200");
        await button.ClickAsync();
        await Expect(tab.Page.Locator("#pieceError")).ToHaveTextAsync("Give a number from -40 to 176 °F, for example 65.3.");

        await number.FillAsync("65.3");
        await button.ClickAsync();
        // 65.3 °F is 18.5 °C: (65.3 - 32) / 1.8.
        await Expect(tab.Field("piece")).ToHaveTextAsync("65.3\u00a0°F", new() { Timeout = 30_000 });
        await Expect(tab.Field("pieceTyped")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex(@"^typed \d+\ss ago, expires in 29\smin$"));
        await Expect(tab.Page.Locator("#pieceError")).ToHaveTextAsync("");
        using HttpClient http = new();
        JsonElement now = JsonDocument.Parse(await http.GetStringAsync(new Uri(url + "/api/now"))).RootElement;
        Assert.Equal(18.5, now.GetProperty("air").GetProperty("pieceTemperatureC").GetDouble(), 1e-9);

        // One unit for everything that people read: no °C is left on the page.
        Assert.DoesNotContain("°C", await tab.Page.Locator("body").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(tab.Complaints);
        await booth.StopAsync();
    }

    [BrowserFact]
    public async Task Refusal_OfTheService_IsShownInItsOwnWords()
    {
        await using ShopPage shop = await ShopPage.Start(sources: Typed);
        await shop.Show(Samples.Spray);
        await using Tab tab = await browser.Open(shop.Url);
        await tab.SignIn(shop.SignInLink, shop.Url);

        // Without its header a change is refused.
        await tab.Page.RouteAsync("**/api/piece-temperature", route => route.ContinueAsync(new RouteContinueOptions
        {
            Headers = route.Request.Headers.Where(header => !header.Key.Equals(AccessGate.ChangeHeader, StringComparison.OrdinalIgnoreCase)).ToDictionary(),
        }));
        await tab.Page.GetByLabel("Piece measured by hand, °C").FillAsync("18.5");
        await tab.Page.GetByLabel("Piece measured by hand, °C").PressAsync("Enter");
        await Expect(tab.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "Not taken: the header X-BoothWatch-Change is missing" })).ToBeVisibleAsync();
    }

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Entry_AtPhoneAndTabletSize_FitsAGlovedFingerAndIsAccessible(int width, int height)
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System), sources: Typed);
        await shop.Show(Samples.SlowDown);
        await using Tab tab = await browser.Open(shop.Url, width, height);
        await tab.Page.Locator("html[data-link=live] .past[data-drawn]").WaitForAsync();

        // WCAG 2.2, 2.5.5 (AAA) asks for 44 CSS pixels for a bare finger.
        foreach (string part in new[] { "#pieceForm input", "#pieceForm button" })
        {
            LocatorBoundingBoxResult box = (await tab.Page.Locator(part).BoundingBoxAsync())!;
            Assert.True(box.Height >= 56 && box.Width >= 56, $"{part} is {box.Width:0} by {box.Height:0} px");
        }

        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        if (Environment.GetEnvironmentVariable("PAGE_TESTS_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"typed-{width}.png"), FullPage = true });
        }

        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
    }

    private static Service.Page.PageSources Typed => Samples.Sources with
    {
        PieceEntry = new Service.Page.PieceEntry(-40, 80, TimeSpan.FromMinutes(30), _ => { }, () => TimeSpan.FromMinutes(3)),
    };

    private async Task<WebApplication> StartBooth()
    {
        string path = Path.Combine(_folder, "boothwatch.json");
        await File.WriteAllTextAsync(path, JsonSerializer.Serialize(new
        {
            booth = new { temperatureUnit = "F" },
            clock = new { requireSynchronised = false },
            sensors = new { proving = true, piece = new { part = "typed" } },
            series = new { folder = _folder },
            page = new { url = "http://127.0.0.1:0" },
        }));
        WebApplication booth = BoothHost.Build(ConfigurationFile.Read(path));
        await booth.StartAsync();
        return booth;
    }
}
