namespace BoothWatch.Tests.Air;

/// <summary>Assertions that take the accuracy of the source, and that zero or a lost factor cannot pass.</summary>
internal static class Near
{
    internal static void Relative(double expected, double actual, double tolerance)
    {
        Assert.NotEqual(0, expected);
        Assert.True(
            Math.Abs((actual / expected) - 1) <= tolerance,
            $"{actual:R} is {(actual / expected) - 1:E2} off {expected:R}; allowed is {tolerance:E2} of it.");
    }

    internal static void Absolute(double expected, double actual, double tolerance) =>
        Assert.True(
            Math.Abs(actual - expected) <= tolerance,
            $"{actual:R} is {actual - expected:E2} off {expected:R}; allowed is {tolerance:E2}.");
}
