using BoothWatch.Service.Sensors.Emulation;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;
using Xunit.Abstractions;

namespace BoothWatch.Service.Tests.Sensors.Emulation;

public class ScriptedShopTests(ITestOutputHelper output)
{
    private const double DayS = 240;

    private readonly FakeTimeProvider _time = new();

    [Fact]
    public void Clock_AfterADay_BeginsTheNextMorning()
    {
        ShopClock clock = new(_time, Options.Create(new DemoOptions { DayLengthS = DayS, StartAt = "09:00" }));
        Assert.Equal("09:00", clock.Now.ToString());
        Assert.Equal("dry morning", clock.Phase);

        _time.Advance(TimeSpan.FromSeconds(DayS / 2));
        Assert.Equal("13:30", clock.Now.ToString());
        Assert.Equal("drizzle", clock.Phase);

        _time.Advance(TimeSpan.FromSeconds(DayS / 2));
        Assert.Equal(new ShopTime(1, TimeSpan.FromHours(9)), clock.Now with { TimeOfDay = TimeSpan.FromHours(Math.Round(clock.Now.TimeOfDay.TotalHours, 6)) });
    }

    [Fact]
    public void Day_FromMorningToRain_SweepsTheHumidityThatVerdictsTurnOn()
    {
        List<ShopState> day = Day();
        foreach (ShopState state in day.Where((_, i) => i % 10 == 0))
        {
            output.WriteLine($"{state.Time} booth {state.BoothAir} dp {state.BoothAir.DewPointC:F1} intake {state.IntakeAir} piece {state.PieceTemperatureC:F1} filter {state.FilterPressureDropPa:F0} Pa");
        }

        Assert.InRange(day[0].BoothAir.TemperatureC, 19.5, 21.5);
        Assert.InRange(day[0].BoothAir.RelativeHumidityPct, 43, 52);
        Assert.All(day.Take(60), state => Assert.True(state.BoothAir.RelativeHumidityPct < 55, $"{state.Time}: {state.BoothAir}"));
        Assert.InRange(day.Max(state => state.BoothAir.RelativeHumidityPct), 88, 95);
        Assert.True(Share(day, 65, 74) > 0.2, "the band in which retarder earns its keep has to last long enough to be seen");
        Assert.True(Share(day, 80, 100) > 0.2, "air that nothing holds has to last long enough to be seen");
    }

    [Fact]
    public void Day_AtEveryMoment_IsPhysicallyPossible()
    {
        List<ShopState> day = Day();
        double highest = day.Max(state => state.IntakeAir.DewPointC);
        double lowest = day.Min(state => state.IntakeAir.DewPointC);
        foreach (ShopState state in day)
        {
            Assert.InRange(state.BoothAir.RelativeHumidityPct, 0, 100);

            // Between the driest and the dampest intake air, and what one person adds: 60 g/h in 0.065 kg/s of air is 0.26 g/kg, 0.6 °C at most here.
            Assert.InRange(state.BoothAir.DewPointC, lowest, highest + 0.6);
            Assert.InRange(state.FilterPressureDropPa, 40, 120);
        }

        // No jump: less than 1 %RH and 0.3 °C from one second to the next.
        Assert.All(day.Zip(day.Skip(1)), pair => Assert.InRange(pair.Second.BoothAir.RelativeHumidityPct - pair.First.BoothAir.RelativeHumidityPct, -1, 1));
        Assert.All(day.Zip(day.Skip(1)), pair => Assert.InRange(pair.Second.BoothAir.TemperatureC - pair.First.BoothAir.TemperatureC, -0.3, 0.3));
    }

    [Fact]
    public void Rain_Arriving_CoolsAndDampensTheOutdoorAir()
    {
        ShopMoment before = ShopScript.At(TimeSpan.FromHours(11));
        ShopMoment after = ShopScript.At(TimeSpan.FromHours(15.5));

        Assert.True(after.OutdoorTemperatureC < before.OutdoorTemperatureC);
        Assert.True(after.OutdoorDewPointC > before.OutdoorDewPointC + 5);
        Assert.True(after.PressurePa < before.PressurePa);
    }

    [Fact]
    public void Script_AtEveryMinute_HasADewPointBelowTheTemperature()
    {
        for (double hour = 8; hour <= 17; hour += 1 / 60.0)
        {
            ShopMoment moment = ShopScript.At(TimeSpan.FromHours(hour));
            Assert.True(moment.OutdoorDewPointC < moment.OutdoorTemperatureC, $"{hour:F2} h");
        }
    }

    [Fact]
    public void Piece_BroughtInUnderTheDewPoint_WarmsInTheFirstHourAndAHalf()
    {
        List<ShopState> day = Day();
        double Colder(int second) => day[second].BoothAir.TemperatureC - day[second].PieceTemperatureC;

        Assert.InRange(Colder(0), 12, 17);
        Assert.True(day[0].PieceTemperatureC < day[0].BoothAir.DewPointC);
        Assert.InRange(Colder(12), 4.5, 6.5);
        Assert.InRange(Colder(40), 0, 1.5);
    }

    [Fact]
    public void Now_AskedSeldom_EqualsNowAskedOften()
    {
        ScriptedShop often = Shop();
        ScriptedShop seldom = Shop();
        for (int second = 0; second < 150; second++)
        {
            often.Now();
            _time.Advance(TimeSpan.FromSeconds(1));
        }

        Assert.Equal(often.Now().BoothAir.TemperatureC, seldom.Now().BoothAir.TemperatureC, 0.01);
        Assert.Equal(often.Now().BoothAir.RelativeHumidityPct, seldom.Now().BoothAir.RelativeHumidityPct, 0.05);
    }

    [Fact]
    public void Now_AfterManyDays_IsThatTimeOfAFreshDay()
    {
        ScriptedShop shop = Shop();
        shop.Now();
        ShopState later;
        _time.Advance(TimeSpan.FromSeconds((100 * DayS) + 120));
        later = shop.Now();

        Assert.Equal(100, later.Time.Day);
        Assert.Equal("12:30", later.Time.ToString());
        Assert.InRange(later.BoothAir.RelativeHumidityPct, 50, 75);
    }

    private static double Share(List<ShopState> day, double lowest, double highest) =>
        day.Count(state => state.BoothAir.RelativeHumidityPct >= lowest && state.BoothAir.RelativeHumidityPct < highest) / (double)day.Count;

    [Fact]
    public void NewDay_AfterClosing_IsAnnouncedForFifteenSeconds()
    {
        ShopClock clock = new(_time, Options.Create(new DemoOptions { DayLengthS = DayS }));
        Assert.False(clock.IsNewDay);
        _time.Advance(TimeSpan.FromSeconds(DayS));
        Assert.True(clock.IsNewDay);
        _time.Advance(TimeSpan.FromSeconds(14));
        Assert.True(clock.IsNewDay);
        _time.Advance(TimeSpan.FromSeconds(2));
        Assert.False(clock.IsNewDay);
    }

    private ScriptedShop Shop() => new(new ShopClock(_time, Options.Create(new DemoOptions { DayLengthS = DayS })));

    private List<ShopState> Day()
    {
        ScriptedShop shop = Shop();
        List<ShopState> day = [];
        for (int second = 0; second < DayS; second++)
        {
            day.Add(shop.Now());
            _time.Advance(TimeSpan.FromSeconds(1));
        }

        return day;
    }
}
