using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>Pictures for a person to look at, kept where PAGE_TESTS_SCREENSHOTS names a folder.</summary>
internal static class Pictures
{
    public static async Task Keep(Tab tab, string name)
    {
        if (Environment.GetEnvironmentVariable("PAGE_TESTS_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png") });
            await tab.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + "-full.png"), FullPage = true });
        }
    }
}
