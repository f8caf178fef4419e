using BoothWatch.Service.Page;

namespace BoothWatch.Page.Tests;

/// <summary>As <see cref="BrowserFactAttribute"/>; skips too where the build had no npm. With CI=true it runs all the same, and fails.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class ChartBrowserFactAttribute : FactAttribute
{
    public ChartBrowserFactAttribute() =>
        Skip = Chromium.SkipReason ?? (PageAssets.HasChartLibrary || Environment.GetEnvironmentVariable("CI") == "true"
            ? null
            : "the build put no chart library into the program: install npm and build again");
}
