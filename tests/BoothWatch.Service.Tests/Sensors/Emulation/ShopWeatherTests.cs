using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Tests.Sensors.Emulation;

public sealed class ShopWeatherTests
{
    private static readonly TimeSpan[] Times = [.. Enumerable.Range(0, 54).Select(i => ShopClock.Opening + TimeSpan.FromMinutes(10 * i))];

    [Fact]
    public void AsPlayed_IsTheScript() => Assert.All(Times, time => Assert.Equal(ShopScript.At(time), ShopScript.At(time, ShopWeather.AsPlayed)));

    [Fact]
    public void EarlierDays_DifferFromEachOther_AndAreTheSameForTheSameSeed()
    {
        IReadOnlyList<ShopWeather> days = ShopWeather.Earlier(35, 1);
        Assert.Equal(days, ShopWeather.Earlier(35, 1));
        Assert.NotEqual(days, ShopWeather.Earlier(35, 2));
        Assert.Equal(35, days.Distinct().Count());
        Assert.InRange(days.Count(day => day.StaysDry), 2, 14);
        Assert.All(days, day => Assert.InRange(day.RainLater, TimeSpan.FromHours(-2), TimeSpan.FromHours(4)));
    }

    [Fact]
    public void ADryDay_HasNoRain_AndNoDayHasADewPointAboveTheAir()
    {
        Assert.All(Times, time => Assert.DoesNotContain("rain", ShopScript.At(time, ShopWeather.AsPlayed with { StaysDry = true }).Phase, StringComparison.Ordinal));
        Assert.All(ShopWeather.Earlier(35, 1), day => Assert.All(Times, time =>
            Assert.True(ShopScript.At(time, day).OutdoorDewPointC <= ShopScript.At(time, day).OutdoorTemperatureC)));
    }
}
