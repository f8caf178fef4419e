using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

/// <summary>Invented days for the tests of the outlook.</summary>
internal static class OutlookDays
{
    public static readonly DateOnly Today = new(2026, 6, 30);

    /// <summary>Days before <see cref="Today"/>; the air by day (1 is yesterday) and hour.</summary>
    public static AirPast Past(int days, Func<int, double, OutlookAir?> air) => new(Enumerable.Range(1, days).Select(back =>
    {
        AirDay day = new(Today.AddDays(-back));
        for (int slot = 0; slot < AirDay.Slots; slot++)
        {
            day[slot] = air(back, slot / 6.0);
        }

        return day;
    }));

    /// <summary>Air that stays as warm, and whose dew point climbs from noon on by some degrees, a little different each day.</summary>
    public static AirPast Wetter(int days, double climbC = 6) =>
        Past(days, (back, hour) => new OutlookAir(21, 8 + (back % 7 * 0.5) + (climbC * (0.8 + (0.1 * (back % 5))) * Math.Clamp((hour - 10 - (back % 3)) / 3, 0, 1))));

    /// <summary>Air whose dew point wanders without any habit, from one day on into the next.</summary>
    public static AirPast Wandering(int days, int seed)
    {
        Random random = new(seed);
        double dewPointC = 10;
        Dictionary<(int, int), double> walk = [];
        for (int back = days; back >= 1; back--)
        {
            for (int slot = 0; slot < AirDay.Slots; slot++)
            {
                dewPointC = Math.Clamp(dewPointC + (0.3 * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5)), -5, 20);
                walk[(back, slot)] = dewPointC;
            }
        }

        return Past(days, (back, hour) => new OutlookAir(21, walk[(back, (int)Math.Round(hour * 6))]));
    }

    public static OutlookQuestion Question(AirPast past, double dewPointC = 9, double hour = 9, double wantedC = 2) => new()
    {
        Past = past,
        Today = Today,
        TimeOfDay = TimeSpan.FromHours(hour),
        DayEnds = TimeSpan.FromHours(18),
        Start = [new OutlookAir(21, dewPointC)],
        Critical = new CriticalDewPoints(airC => airC - 5),
        WantedC = wantedC,
    };
}
