using BoothWatch.Service.Page;

namespace BoothWatch.Page.Tests;

/// <summary>As <see cref="BrowserTheoryAttribute"/>; skips too where the build had no npm. With CI=true it runs all the same, and fails.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class ChartBrowserTheoryAttribute : TheoryAttribute
{
    public ChartBrowserTheoryAttribute() =>
        Skip = Chromium.SkipReason ?? (PageAssets.HasChartLibrary || Environment.GetEnvironmentVariable("CI") == "true"
            ? null
            : "the build put no chart library into the program: install npm and build again");
}
