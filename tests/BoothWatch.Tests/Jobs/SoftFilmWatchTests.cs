using BoothWatch.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Jobs;

/// <summary>The watch over a soft film; 3 °C of clearance after ISO 8502-4:2017.</summary>
public class SoftFilmWatchTests
{
    private static readonly Job Sprayed = Sample.Job(new CoatMarked(1, Sample.Coat(0, stopMinute: 5), null));

    [Theory]
    [InlineData(18.0, 10.0, WatchState.Safe)]
    [InlineData(13.0, 10.0, WatchState.Safe)]
    [InlineData(12.9, 10.0, WatchState.Close)]
    [InlineData(10.1, 10.0, WatchState.Close)]
    [InlineData(10.0, 10.0, WatchState.Wet)]
    [InlineData(8.0, 10.0, WatchState.Wet)]
    public void Watch_ByClearance_IsSafeCloseOrWet(double pieceC, double dewPointC, WatchState expected) =>
        Assert.Equal(expected, Watch(pieceC, dewPointC)!.State);

    [Theory]
    [InlineData(null, 10.0)]
    [InlineData(18.0, null)]
    public void Watch_WithoutAValue_IsUnknownAndNeverSafe(double? pieceC, double? dewPointC) =>
        Assert.Equal(WatchState.Unknown, Watch(pieceC, dewPointC)!.State);

    [Fact]
    public void Watch_WhileTheShopCools_SaysHowFast()
    {
        SoftFilmWatch watch = Watch(16, 10, anHourAgo: 7.5)!;
        Assert.Equal(1.5, watch.FallCPerH!.Value, 9);
        Assert.Equal("the piece is 6.0 °C above the dew point, falling 1.5 °C an hour; if that went on, 3.0 °C would be reached in 2.0 h", watch.Finding);
    }

    [Fact]
    public void Watch_OfAHardFilmOrFinishedJob_Ends()
    {
        Assert.Null(SoftFilmWatch.Of(Sprayed, Sample.Day, Sample.Day, 18, 10, null, 3, default));
        Assert.Null(SoftFilmWatch.Of(Sample.Job(new CoatMarked(1, Sample.Coat(0), null), new JobFinished()), null, Sample.Day, 18, 10, null, 3, default));
    }

    [Fact]
    public void Watch_WhoseEndNobodyCanSay_GoesOn() =>
        Assert.NotNull(SoftFilmWatch.Of(Sprayed, null, Sample.Day.AddYears(1), 18, 10, null, 3, default));

    private static SoftFilmWatch? Watch(double? pieceC, double? dewPointC, double? anHourAgo = null) =>
        SoftFilmWatch.Of(Sprayed, Sample.Day.AddDays(1), Sample.Day.AddHours(1), pieceC, dewPointC, anHourAgo, 3, new TemperatureText(TemperatureUnit.Celsius));
}
