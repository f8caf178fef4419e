using BoothWatch.Outlook;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Outlook;

public class AirPathsTests
{
    [Fact]
    public void Trace_BridgesAnHour_AndEndsBeforeALongerSilence()
    {
        AirPast past = OutlookDays.Past(2, (back, hour) => back == 1 && (hour is > 9 and < 10 || hour is > 11 and < 13) ? null : new OutlookAir(20, hour));
        OutlookAir[] trace = past.Trace(OutlookDays.Today.AddDays(-1), 8 * 6, 60);
        Assert.Equal((11 - 8) * 6, trace.Length - 1);
        Assert.Equal(9.5, trace[9].DewPointC, 0.001);
    }

    [Fact]
    public void Trace_GoesOnOverMidnight_AndEndsWithTheRecord()
    {
        AirPast past = OutlookDays.Past(2, (back, hour) => new OutlookAir(20, back));
        OutlookAir[] trace = past.Trace(OutlookDays.Today.AddDays(-2), 23 * 6, 60);
        Assert.Equal(61, trace.Length);
        Assert.Equal((2, 1), (trace[5].DewPointC, trace[6].DewPointC));
        Assert.Equal(6, past.Trace(OutlookDays.Today.AddDays(-1), 23 * 6, 60).Length);
    }

    [Fact]
    public void Trace_WhoseStartIsNotOnRecord_IsEmpty() =>
        Assert.Empty(OutlookDays.Past(1, (_, hour) => hour < 9 ? null : new OutlookAir(20, 10)).Trace(OutlookDays.Today.AddDays(-1), 8 * 6, 60));

    [Property]
    public void Members_NeverHaveADewPointAboveTheAir(int seed, short temperature, short dewPoint)
    {
        double temperatureC = temperature % 45;
        double dewPointC = Math.Min(temperatureC, dewPoint % 45);
        AirPaths paths = AirPaths.Of(OutlookDays.Wandering(12, seed), OutlookDays.Today, 48, [new OutlookAir(temperatureC, dewPointC)], 30, 10, 60);
        Assert.Equal(12, paths.Count);
        for (int path = 0; path < paths.Count; path++)
        {
            Assert.All(paths[path], air => Assert.True(air.DewPointC <= air.TemperatureC));
            Assert.Equal((temperatureC, dewPointC), (paths[path][0].TemperatureC, paths[path][0].DewPointC));
        }
    }

    [Fact]
    public void Paths_ReachAsFarAsEnoughDaysDo()
    {
        AirPast past = OutlookDays.Past(20, (back, hour) => back > 8 && hour > 15 ? null : new OutlookAir(20, 10));
        Assert.Equal(7 * 6, AirPaths.Of(past, OutlookDays.Today, 48, [new OutlookAir(20, 10)], 30, 10, 60).Steps);
        Assert.Equal(60, AirPaths.Of(past, OutlookDays.Today, 48, [new OutlookAir(20, 10)], 30, 8, 60).Steps);
    }

    [Fact]
    public void Paths_KnowNothingOfTheDayItselfNorOfLaterOnes()
    {
        AirPast past = OutlookDays.Wetter(30);
        DateOnly earlier = OutlookDays.Today.AddDays(-10);
        AirPast before = OutlookDays.Past(30, (back, hour) => back <= 10 ? new OutlookAir(30, 29) : past.Trace(OutlookDays.Today.AddDays(-back), (int)Math.Round(hour * 6), 1)[0]);
        AirPaths a = AirPaths.Of(past, earlier, 48, [new OutlookAir(20, 10)], 15, 10, 60);
        AirPaths b = AirPaths.Of(before, earlier, 48, [new OutlookAir(20, 10)], 15, 10, 60);
        Assert.Equal(a.Count, b.Count);
        Assert.All(Enumerable.Range(0, a.Count), path => Assert.Equal(a[path], b[path]));
    }
}
