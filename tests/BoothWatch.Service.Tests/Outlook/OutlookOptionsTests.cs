using BoothWatch.Service.Outlook;

namespace BoothWatch.Service.Tests.Outlook;

public sealed class OutlookOptionsTests
{
    [Fact]
    public void Defaults_AreValid() => Assert.True(new OutlookOptionsValidator().Validate(null, new OutlookOptions()).Succeeded);

    [Fact]
    public void Mistakes_AreAllNamedWithKeyValueRangeAndExample() => Assert.Equal(
        [
            "outlook:windowDays is 14; give a number from 15 to 120 (days), for example 30",
            "outlook:everyMinutes is 0; give a number from 1 to 60 (minutes), for example 5",
            "outlook:dayEndsAt is \"6pm\"; give a time from 00:30 to 23:59 as hh:mm, for example 18:00",
        ],
        new OutlookOptionsValidator().Validate(null, new OutlookOptions { WindowDays = 14, EveryMinutes = 0, DayEndsAt = "6pm" }).Failures);
}
