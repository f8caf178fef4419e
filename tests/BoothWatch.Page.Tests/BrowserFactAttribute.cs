namespace BoothWatch.Page.Tests;

/// <summary>
/// A test in a real browser. Skips with a clear word where Chromium is missing; with CI=true it runs all the same, and fails.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = Chromium.SkipReason;
}
