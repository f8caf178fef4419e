namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>How another day at the shop differs from the one that is played: the same script, with its rain at another time, or none.</summary>
/// <param name="RainLater">How much later the rain comes; below 0 earlier.</param>
/// <param name="WarmerC">How much warmer it is outdoors, °C; the workshop by a third of it.</param>
/// <param name="DamperC">How much higher the dew point outdoors is, °C.</param>
/// <param name="StaysDry">No rain comes.</param>
public sealed record ShopWeather(TimeSpan RainLater, double WarmerC, double DamperC, bool StaysDry)
{
    /// <summary>The day that is played.</summary>
    public static ShopWeather AsPlayed { get; } = new(TimeSpan.Zero, 0, 0, false);

    /// <summary>Earlier days, all invented: the rain up to two hours earlier or four later, one day in five dry, a little warmer or colder, damper or drier.</summary>
    /// <param name="days">How many.</param>
    /// <param name="seed">The same seed gives the same days.</param>
    public static IReadOnlyList<ShopWeather> Earlier(int days, int seed)
    {
        // Not System.Random, whose numbers another version of .NET may change: a generator of the family of Park and Miller (1988).
        long state = 1 + Math.Abs((long)seed % 2_147_483_646);
        double Next() => (state = state * 48_271 % 2_147_483_647) / 2_147_483_647.0;
        for (int i = 0; i < 10; i++)
        {
            Next();
        }

        return
        [
            .. Enumerable.Range(0, days).Select(_ => new ShopWeather(
                TimeSpan.FromMinutes(Math.Round(-120 + (360 * Next()))), Math.Round((4 * Next()) - 2, 1), Math.Round((3 * Next()) - 1.5, 1), Next() < 0.2)),
        ];
    }
}
