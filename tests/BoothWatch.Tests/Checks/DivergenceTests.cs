using BoothWatch.Checks;

namespace BoothWatch.Tests.Checks;

public class DivergenceTests
{
    private static readonly DateTimeOffset Start = new(2026, 6, 1, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Of_TooFewHours_IsNotKnown()
    {
        Assert.Null(Divergence.Of([], Start, 5));
        Assert.Null(Divergence.Of(Hours(11, _ => 4), Start.AddHours(11), 5));
        Assert.NotNull(Divergence.Of(Hours(12, _ => 4), Start.AddHours(12), 5));
        Assert.Null(Divergence.Of(Hours(100, _ => 4), Start.AddDays(30), 5)); // none of the last week
    }

    [Theory]
    [InlineData(2.4, false)]
    [InlineData(2.6, true)]
    [InlineData(-2.6, true)]
    public void Of_AStandingDifference_IsSlowBeyondHalfTheLimit(double difference, bool slow)
    {
        Divergence found = Divergence.Of(Hours(100, _ => difference), Start.AddHours(100), 5)!;
        Assert.Equal((slow, difference), (found.IsSlow, found.LastWeek));
        Assert.Null(found.Change);
    }

    // A creep of 0.03 a day, 3 in a hundred days, from -1.5: it is never half the limit apart, but has moved by more than that.
    [Fact]
    public void Of_ACreepAcrossZero_IsSlowByItsChange()
    {
        Divergence found = Divergence.Of(Hours(24 * 100, hour => -1.5 + (0.03 * hour / 24)), Start.AddDays(100), 5)!;
        Assert.Equal(2.79, found.Change!.Value, 2); // from the middle of the first week to that of the last: 93 days
        Assert.True(Math.Abs(found.LastWeek) < 2.5);
        Assert.True(found.IsSlow);
    }

    [Fact]
    public void Of_ADayWithTheDoorOpen_DoesNotCount() =>
        Assert.False(Divergence.Of(Hours(24 * 7, hour => hour is > 100 and < 125 ? 8 : 0.3), Start.AddDays(7), 5)!.IsSlow);

    private static HourDifference[] Hours(int count, Func<int, double> mean) => [.. Enumerable.Range(0, count).Select(hour => new HourDifference(Start.AddHours(hour), mean(hour)))];
}
