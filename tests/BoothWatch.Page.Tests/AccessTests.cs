using System.Text.RegularExpressions;
using BoothWatch.Service.Tests.Access;
using BoothWatch.Service.Tests.Jobs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>Signing in and out in a real browser, over the whole service.</summary>
[Collection(BrowserTests.Name)]
public sealed class AccessTests(Browser browser)
{
    private const string Secret = "winch gravel plum teapot";

    [BrowserFact]
    public async Task Keyboard_FromAfar_SignsIn_MarksACoat_AndSignsOut()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        await using Tab tab = await browser.Open("about:blank", 390, 844);
        IPage page = tab.Page;
        await page.Context.SetExtraHTTPHeadersAsync(new Dictionary<string, string> { [SeemsFrom.Header] = SeemsFrom.Afar });

        await page.GotoAsync(host.Url + "/jobs");
        await Expect(page).ToHaveURLAsync(new Regex(Regex.Escape("/sign-in?next=%2Fjobs") + "$"));
        await Expect(page.GetByLabel("Shared secret of the shop")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("a wrong one");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Alert)).ToHaveTextAsync("Not signed in: that is not the secret.");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Sign in" })).ToBeEnabledAsync();
        await page.Keyboard.TypeAsync(Secret); // what was typed is selected, so this replaces it
        await page.Keyboard.PressAsync("Enter");
        await Expect(page).ToHaveURLAsync(new Regex(Regex.Escape("/jobs") + "$"));

        await page.GetByLabel("Piece").First.FocusAsync();
        await page.Keyboard.TypeAsync("side table");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#piece")).ToHaveTextAsync("side table");
        await TabTo(page, "Mark flash coat");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop coat 1" }).WaitForAsync();
        await TabTo(page, "Sign out");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByText("You are signed out.")).ToBeVisibleAsync();
        await page.GotoAsync(host.Url + "/jobs?id=1");
        await Expect(page).ToHaveURLAsync(new Regex(Regex.Escape("/sign-in?next=%2Fjobs%3Fid%3D1") + "$"));

        // The console names the one refusal that the wrong secret got, and nothing of the content policy.
        Assert.All(tab.Complaints, complaint => Assert.Contains("401", complaint, StringComparison.Ordinal));
        Assert.Single(tab.Complaints);
    }

    [BrowserFact]
    public async Task Change_WithoutASession_LeadsToTheSignIn_AndTheCodeOfTheLogBack()
    {
        await using JobHost host = await JobHost.StartSignedOut(null);
        await using Tab tab = await browser.Open(host.Url + "/jobs", 390, 844);
        await tab.Page.GetByLabel("Piece").First.FillAsync("side table");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Start" }).ClickAsync();
        await Expect(tab.Page).ToHaveURLAsync(new Regex(Regex.Escape("/sign-in?next=%2Fjobs") + "$"));
        await tab.Page.GetByLabel("Start code").FillAsync(host.SignInLink.Split('#')[1]);
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Expect(tab.Page).ToHaveURLAsync(new Regex(Regex.Escape("/jobs") + "$"));
        await tab.Page.GetByLabel("Piece").First.FillAsync("side table");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Start" }).ClickAsync();
        await Expect(tab.Page.Locator("#piece")).ToHaveTextAsync("side table");
    }

    [BrowserFact]
    public async Task Page_WhoseSessionEnds_LeadsToTheSignIn()
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        await using Tab tab = await browser.Open("about:blank");
        await tab.Page.Context.SetExtraHTTPHeadersAsync(new Dictionary<string, string> { [SeemsFrom.Header] = SeemsFrom.Afar });
        await tab.Page.GotoAsync(host.Url);
        await tab.Page.GetByLabel("Shared secret of the shop").FillAsync(Secret);
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await tab.Page.Locator("html[data-link=live]").WaitForAsync();
        await tab.Page.Context.ClearCookiesAsync();
        await tab.Page.EvaluateAsync("source.close(); connect()");
        await Expect(tab.Page).ToHaveURLAsync(new Regex(Regex.Escape("/sign-in?next=%2F") + "$"));
    }

    [BrowserFact]
    public async Task AnotherSite_InTheSameBrowser_CannotChangeAnything()
    {
        await using JobHost host = await JobHost.Start();
        await using Tab tab = await browser.Open(host.Url);
        await tab.SignIn(host.SignInLink, host.Url);

        await using WebApplication other = WebApplication.CreateSlimBuilder().Build();
        other.Urls.Add("http://127.0.0.1:0");
        other.MapGet("/", () => Results.Content("<!doctype html><title>another site</title>", "text/html"));
        await other.StartAsync();
        await tab.Page.GotoAsync(other.Urls.Single().Replace("127.0.0.1", "localhost", StringComparison.Ordinal));
        string[] outcomes = await tab.Page.EvaluateAsync<string[]>(
            """
            async target => {
              const outcomes = [];
              for (const headers of [{ "Content-Type": "text/plain" }, { "Content-Type": "application/json", "X-BoothWatch-Change": "1" }]) {
                for (const mode of ["cors", "no-cors"]) {
                  try {
                    const answer = await fetch(target, { method: "POST", mode, credentials: "include", headers, body: '{ "piece": "side table" }' });
                    outcomes.push(answer.type === "opaque" ? "opaque" : String(answer.status));
                  } catch { outcomes.push("refused"); }
                }
              }
              return outcomes;
            }
            """, host.Url + "/api/jobs");
        Assert.Equal(4, outcomes.Length);
        Assert.DoesNotContain("201", outcomes);

        // A form needs no leave to be sent: it arrives, and is refused there.
        IResponse answer = await tab.Page.RunAndWaitForResponseAsync(
            () => tab.Page.EvaluateAsync(
                """
                target => {
                  const form = document.createElement("form"), field = document.createElement("input");
                  Object.assign(form, { method: "post", action: target, enctype: "text/plain" });
                  Object.assign(field, { name: '{ "piece": "side table", "note": "', value: '" }' });
                  form.append(field);
                  document.body.append(form);
                  form.submit();
                }
                """, host.Url + "/api/jobs"),
            response => response.Url == host.Url + "/api/jobs");
        Assert.Equal(403, answer.Status);
        Assert.Equal(0, (await host.Get("/api/jobs")).GetProperty("total").GetInt32());
    }

    [BrowserTheory]
    [InlineData(390, 844, false)]
    [InlineData(1280, 800, false)]
    [InlineData(390, 844, true)]
    [InlineData(1280, 800, true)]
    public async Task SignIn_AtPhoneAndTabletSize_FitsAGlovedFingerAndIsAccessible(int width, int height, bool refused)
    {
        await using JobHost host = await JobHost.StartSignedOut(Secret);
        await using Tab tab = await browser.Open(host.Url + "/sign-in", width, height);
        await Expect(tab.Page.GetByLabel("Shared secret of the shop")).ToBeVisibleAsync();
        if (refused)
        {
            await tab.Page.GetByLabel("Shared secret of the shop").FillAsync("a wrong one");
            await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Show what is typed" }).ClickAsync();
            await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
            await Expect(tab.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("that is not the secret");
        }

        // WCAG 2.2, 2.5.5 (AAA) asks for 44 CSS pixels for a bare finger.
        foreach (string part in new[] { "#secret", "#show", "#submit" })
        {
            LocatorBoundingBoxResult box = (await tab.Page.Locator(part).BoundingBoxAsync())!;
            Assert.True(box.Height >= 56 && box.Width >= 56, $"{part} is {box.Width:0} by {box.Height:0} px");
        }

        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
        Assert.DoesNotContain(tab.Complaints, complaint => !complaint.Contains("401", StringComparison.Ordinal));
        if (Environment.GetEnvironmentVariable("PAGE_TESTS_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"sign-in-{width}{(refused ? "-refused" : "")}.png") });
        }
    }

    /// <summary>Presses Tab until the button of that name has the focus.</summary>
    private static async Task TabTo(IPage page, string name)
    {
        ILocator button = page.GetByRole(AriaRole.Button, new() { Name = name });
        await button.WaitForAsync();
        for (int i = 0; i < 60; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await button.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                return;
            }
        }

        Assert.Fail($"'{name}' is not reached with the Tab key");
    }
}
