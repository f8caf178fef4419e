using BoothWatch.Service.Page;

namespace BoothWatch.Service.Tests.Page;

/// <summary>A test of the chart library: skips where the build had no npm; with CI=true it runs all the same, and fails.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class ChartLibraryFactAttribute : FactAttribute
{
    public ChartLibraryFactAttribute() =>
        Skip = PageAssets.HasChartLibrary || Environment.GetEnvironmentVariable("CI") == "true"
            ? null
            : "the build put no chart library into the program: install npm and build again";
}
