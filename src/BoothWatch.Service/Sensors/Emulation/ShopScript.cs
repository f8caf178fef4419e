namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>
/// One day at the Harbour Lane shop, invented: a dry morning, then warm rain from the sea. Outdoors the temperature
/// falls while the dew point climbs by ten degrees. Values between two entries are interpolated.
/// </summary>
public static class ShopScript
{
    /// <summary>How much colder than the booth the piece is when it is brought in at 08:00, from a van that stood out at night, K.</summary>
    public const double PieceColderK = 17;

    private static readonly TimeSpan RainGathers = new(10, 0, 0);
    private static readonly TimeSpan DoorOpens = new(9, 0, 0);
    private static readonly TimeSpan DoorCloses = new(9, 8, 0);

    private static readonly Entry[] Day =
    [
        new(new TimeSpan(8, 0, 0), 16.0, 8.8, 101_600, 21.5, 250, "dry morning"),
        new(new TimeSpan(10, 0, 0), 19.5, 9.2, 101_450, 22.0, 200, "clouds gathering"),
        new(new TimeSpan(10, 30, 0), 21.0, 10.0, 101_350, 22.0, 150, "rain arriving"),
        new(new TimeSpan(11, 45, 0), 21.3, 15.4, 101_000, 22.5, 150, "first showers"),
        new(new TimeSpan(12, 15, 0), 21.3, 16.7, 100_900, 22.5, 150, "drizzle"),
        new(new TimeSpan(14, 15, 0), 21.0, 17.6, 100_500, 22.5, 150, "rain"),
        new(new TimeSpan(15, 15, 0), 20.4, 19.8, 100_350, 21.8, 100, "steady rain"),
        new(new TimeSpan(17, 0, 0), 20.2, 19.9, 100_300, 21.6, 100, "steady rain"),
    ];

    /// <summary>What the script says of a time of day, 08:00 to 17:00.</summary>
    public static ShopMoment At(TimeSpan timeOfDay)
    {
        int next = Array.FindIndex(Day, 1, entry => entry.At > timeOfDay);
        Entry to = Day[next < 0 ? ^1 : next];
        Entry from = next < 0 ? to : Day[next - 1];
        double share = next < 0 ? 0 : Math.Clamp((timeOfDay - from.At) / (to.At - from.At), 0, 1);
        return new ShopMoment(
            Between(from.OutdoorTemperatureC, to.OutdoorTemperatureC, share),
            Between(from.OutdoorDewPointC, to.OutdoorDewPointC, share),
            Between(from.PressurePa, to.PressurePa, share),
            Between(from.WorkshopTemperatureC, to.WorkshopTemperatureC, share),
            Between(from.HeatGainW, to.HeatGainW, share),
            FanOn: true,
            DoorOpen: timeOfDay >= DoorOpens && timeOfDay < DoorCloses,
            from.Phase);
    }

    /// <summary>What the script says of a time of day on a day of other weather.</summary>
    public static ShopMoment At(TimeSpan timeOfDay, ShopWeather weather)
    {
        ArgumentNullException.ThrowIfNull(weather);
        TimeSpan played = timeOfDay - weather.RainLater;
        played = weather.StaysDry && played > RainGathers ? RainGathers : played < Day[0].At ? Day[0].At : played;
        ShopMoment moment = At(played);
        double temperatureC = moment.OutdoorTemperatureC + weather.WarmerC;
        return moment with
        {
            OutdoorTemperatureC = temperatureC,
            OutdoorDewPointC = Math.Min(temperatureC, moment.OutdoorDewPointC + weather.DamperC),
            WorkshopTemperatureC = moment.WorkshopTemperatureC + (weather.WarmerC / 3),
            DoorOpen = At(timeOfDay).DoorOpen,
        };
    }

    private static double Between(double from, double to, double share) => from + ((to - from) * share);

    private sealed record Entry(
        TimeSpan At,
        double OutdoorTemperatureC,
        double OutdoorDewPointC,
        double PressurePa,
        double WorkshopTemperatureC,
        double HeatGainW,
        string Phase);
}
