using System.Globalization;
using BoothWatch.Alerts;
using BoothWatch.Readings;
using BoothWatch.Tests.Verdicts;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Alerts;

/// <summary>
/// Quiet hours over midnight and over the changes of the clock. Central European time: forward at 01:00 UTC of the last Sunday of March,
/// back at 01:00 UTC of the last Sunday of October (Directive 2000/84/EC, articles 2 and 3); in 2026 29 March and 25 October.
/// </summary>
public class QuietHoursTests
{
    private static readonly TimeZoneInfo CentralEurope = TimeZoneInfo.CreateCustomTimeZone(
        "CET", TimeSpan.FromHours(1), "CET", "CET", "CEST",
        [
            TimeZoneInfo.AdjustmentRule.CreateAdjustmentRule(
                DateTime.MinValue.Date, DateTime.MaxValue.Date, TimeSpan.FromHours(1),
                TimeZoneInfo.TransitionTime.CreateFloatingDateRule(new DateTime(1, 1, 1, 2, 0, 0), 3, 5, DayOfWeek.Sunday),
                TimeZoneInfo.TransitionTime.CreateFloatingDateRule(new DateTime(1, 1, 1, 3, 0, 0), 10, 5, DayOfWeek.Sunday)),
        ]);

    [Theory]
    [InlineData("22:00", "06:30", "2026-06-03T19:59:59Z", null)] // 21:59:59 CEST
    [InlineData("22:00", "06:30", "2026-06-03T20:00:00Z", "2026-06-04T04:30:00Z")]
    [InlineData("22:00", "06:30", "2026-06-04T04:29:59Z", "2026-06-04T04:30:00Z")]
    [InlineData("22:00", "06:30", "2026-06-04T04:30:00Z", null)]
    [InlineData("12:00", "13:00", "2026-06-04T10:30:00Z", "2026-06-04T11:00:00Z")]
    [InlineData("12:00", "13:00", "2026-06-04T20:30:00Z", null)]
    [InlineData("12:00", "12:00", "2026-06-04T10:00:00Z", null)]
    [InlineData("22:00", "06:30", "2026-03-28T21:00:00Z", "2026-03-29T04:30:00Z")] // the short night
    [InlineData("22:00", "06:30", "2026-10-24T20:00:00Z", "2026-10-25T05:30:00Z")] // the long night
    [InlineData("22:00", "02:30", "2026-03-29T00:59:59Z", "2026-03-29T01:00:00Z")] // 02:30 does not exist: until the change
    [InlineData("22:00", "02:30", "2026-03-29T01:00:00Z", null)]
    [InlineData("22:00", "02:30", "2026-10-25T00:29:59Z", "2026-10-25T00:30:00Z")] // the first 02:30, summer time
    [InlineData("22:00", "02:30", "2026-10-25T01:15:00Z", null)] // the second 02:15, winter time
    public void Quiet_AtATime_EndsAsTheClockInTheShopSays(string from, string to, string time, string? end)
    {
        DateTimeOffset? expected = end is null ? null : At(end);

        Assert.Equal(expected, Hours(from, to).EndOf(At(time), CentralEurope));
    }

    [Fact]
    public void Trouble_InQuietHours_IsToldAtTheirEndIfItIsStillThere()
    {
        AlertBooth booth = Night();
        booth.Jobs = [];
        booth.Run(1);
        booth.Instead = [GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.NoReading)];
        Assert.Equal([EpisodeStep.Began], booth.Run(600).Select(change => change.Step));

        booth.Time = At("2026-06-04T04:29:58Z");
        booth.Run(1);
        Assert.Equal(0, booth.Told(AlertKind.SensorsLost));
        booth.Run(2);
        Assert.Equal(1, booth.Told(AlertKind.SensorsLost));
    }

    [Fact]
    public void Trouble_ThatIsOverBeforeQuietHoursAre_IsNeverTold()
    {
        AlertBooth booth = Night();
        booth.Run(1);
        booth.Instead = [GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.NoReading)];
        booth.Run(600);
        booth.Instead = [];
        booth.Run(600);

        Assert.Equal([EpisodeStep.Began, EpisodeStep.Cleared], booth.All.Select(change => change.Step));
        Assert.False(booth.All[1].Episode.IsTold);
    }

    [Fact]
    public void Kind_ThatMayBreakThem_IsToldInQuietHours()
    {
        AlertBooth booth = Night();
        booth.Exhaust = true;
        booth.Run(10);
        booth.Verdict = Verdict.Wait;
        booth.Run(1);

        Assert.Equal(1, booth.Told(AlertKind.VerdictWorse));
    }

    [Fact]
    public void AllClear_InQuietHours_WaitsForTheirEnd()
    {
        AlertBooth booth = new() { Exhaust = false, Zone = CentralEurope, Time = At("2026-06-03T19:50:00Z") };
        booth.Limits = booth.Limits with { Quiet = Hours("22:00", "06:30") };
        booth.Run(1);
        booth.Instead = [GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.NoReading)];
        booth.Run(700);
        booth.Instead = [];

        Assert.Equal(At("2026-06-04T04:30:00Z"), Assert.Single(booth.Run(200)).NotBefore);
    }

    private static AlertBooth Night()
    {
        AlertBooth booth = new() { Exhaust = false, Zone = CentralEurope, Time = At("2026-06-03T23:00:00Z") };
        booth.Limits = booth.Limits with { Quiet = Hours("22:00", "06:30") };
        return booth;
    }

    private static QuietHours Hours(string from, string to) =>
        new(TimeOnly.Parse(from, CultureInfo.InvariantCulture), TimeOnly.Parse(to, CultureInfo.InvariantCulture));

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);
}
