using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>One browser for all tests of the collection.</summary>
public sealed class Browser : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async Task InitializeAsync()
    {
        if (Chromium.SkipReason is not null)
        {
            return;
        }

        // Nothing is measured by it: a machine that is busy with other tests takes its time.
        Assertions.SetDefaultExpectTimeout(60_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Chromium.Path,
            Args = Chromium.Flags,
            Timeout = 120_000,
        });
    }

    /// <summary>A tab of its own, with everything that the console said.</summary>
    public async Task<Tab> Open(string url, int width = 1280, int height = 800, bool script = true, bool fakeClock = false)
    {
        IBrowserContext context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            JavaScriptEnabled = script,
        });
        IPage page = await context.NewPageAsync();
        page.SetDefaultTimeout(60_000);
        if (fakeClock)
        {
            await page.Clock.InstallAsync();
        }

        Tab tab = new(context, page);
        await page.GotoAsync(url, new PageGotoOptions { WaitUntil = WaitUntilState.DOMContentLoaded });
        return tab;
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}
