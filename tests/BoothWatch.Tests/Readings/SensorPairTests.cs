using BoothWatch.Readings;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Readings;

public class SensorPairTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    [Fact]
    public void Combine_TwoThatAgree_IsTheFirst()
    {
        Reading reading = new SensorPair(5, Minute).Combine(Humidity("a", 60), Humidity("b", 64), TimeSpan.Zero);
        Assert.Equal("a", reading.Sensor);
        Assert.True(reading.IsGood);
    }

    [Theory]
    [InlineData(59, ReadingQuality.Good)]
    [InlineData(60, ReadingQuality.Disagreeing)]
    public void Combine_ApartForAMinute_Disagrees(int seconds, ReadingQuality expected)
    {
        SensorPair pair = new(5, Minute);
        pair.Combine(Humidity("a", 60), Humidity("b", 70), TimeSpan.Zero);
        Reading reading = pair.Combine(Humidity("a", 60), Humidity("b", 70), TimeSpan.FromSeconds(seconds));
        Assert.Equal(expected, reading.Quality);
        if (expected == ReadingQuality.Disagreeing)
        {
            Assert.Equal("a reads 60 and b 70 %: one of them is wrong", reading.Cause?.ToString());
        }
    }

    [Fact]
    public void Combine_AgreedInBetween_StartsOver()
    {
        SensorPair pair = new(5, Minute);
        pair.Combine(Humidity("a", 60), Humidity("b", 70), TimeSpan.Zero);
        pair.Combine(Humidity("a", 60), Humidity("b", 62), TimeSpan.FromSeconds(30));
        Assert.True(pair.Combine(Humidity("a", 60), Humidity("b", 70), TimeSpan.FromSeconds(70)).IsGood);
    }

    [Fact]
    public void Combine_ApartWithinTheirUncertainty_Agrees()
    {
        SensorPair pair = new(1, TimeSpan.Zero);
        Reading wide = Humidity("b", 68) with { StandardUncertainty = 3 };
        Assert.True(pair.Combine(Humidity("a", 60), wide, TimeSpan.Zero).IsGood);
        Assert.False(pair.Combine(Humidity("a", 60), Humidity("b", 68), TimeSpan.Zero).IsGood);
    }

    [Theory]
    [InlineData(ReadingQuality.Missing, true)]
    [InlineData(ReadingQuality.NoReading, true)]
    [InlineData(ReadingQuality.Stale, true)]
    [InlineData(ReadingQuality.Frozen, false)]
    [InlineData(ReadingQuality.OutOfRange, false)]
    [InlineData(ReadingQuality.Saturated, false)]
    [InlineData(ReadingQuality.Condensing, false)]
    [InlineData(ReadingQuality.BeingChecked, true)]
    [InlineData(ReadingQuality.FailedCheck, true)]
    public void Combine_FirstNotGood_SecondStandsInForOneThatIsSilentOrAway(ReadingQuality quality, bool standsIn)
    {
        Reading bad = Humidity("a", 60) with { Quality = quality, Cause = "it is broken" };
        Reading reading = new SensorPair(5, Minute).Combine(bad, Humidity("b", 61), TimeSpan.Zero);
        Assert.Equal(standsIn ? "b" : "a", reading.Sensor);
        Assert.Equal(standsIn, reading.IsGood);
    }

    [Property]
    public void Combine_NeitherGood_IsNeverGood(ReadingQuality first, ReadingQuality second)
    {
        if (first != ReadingQuality.Good && second != ReadingQuality.Good)
        {
            Reading a = Humidity("a", 60) with { Quality = first, Cause = "it is broken" };
            Reading b = Humidity("b", 60) with { Quality = second, Cause = "it is broken" };
            Assert.False(new SensorPair(5, Minute).Combine(a, b, TimeSpan.Zero).IsGood);
        }
    }

    [Fact]
    public void Combine_DifferentQuantities_IsRefused() =>
        Assert.Throws<ArgumentException>(() => new SensorPair(5, Minute).Combine(
            Humidity("a", 60), Humidity("b", 60) with { Quantity = Quantity.IntakeHumidity }, TimeSpan.Zero));

    private static Reading Humidity(string sensor, double value) =>
        new(Quantity.BoothHumidity, sensor, value, 1, TimeSpan.Zero, ReadingQuality.Good, null);
}
