namespace BoothWatch.Page.Tests;

/// <summary>As <see cref="BrowserFactAttribute"/>, with data.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute() => Skip = Chromium.SkipReason;
}
