using System.Globalization;

namespace BoothWatch.Service.Page;

/// <summary>Marks of a time axis at round times of the shop's clock.</summary>
public static class TimeTicks
{
    private static readonly int[] StepsS =
        [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400];

    /// <summary>At most <paramref name="most"/> marks from <paramref name="from"/> to <paramref name="to"/>, each with its label.</summary>
    public static IReadOnlyList<(DateTimeOffset Time, string Label)> Between(DateTimeOffset from, DateTimeOffset to, int most, TimeZoneInfo zone)
    {
        double spanS = (to - from).TotalSeconds;
        int stepS = StepsS.FirstOrDefault(s => spanS / s <= most - 1, StepsS[^1]);
        string format = stepS < 60 ? "HH:mm:ss" : to - from > TimeSpan.FromDays(1) ? "ddd HH:mm" : "HH:mm";

        List<(DateTimeOffset, string)> ticks = [];
        DateTimeOffset local = TimeZoneInfo.ConvertTime(from, zone);
        DateTimeOffset midnight = local - local.TimeOfDay;
        double sinceMidnightS = (local - midnight).TotalSeconds;
        DateTimeOffset tick = midnight.AddSeconds(Math.Ceiling(sinceMidnightS / stepS) * stepS);
        for (; tick <= to; tick = tick.AddSeconds(stepS))
        {
            ticks.Add((tick, TimeZoneInfo.ConvertTime(tick, zone).ToString(format, CultureInfo.InvariantCulture)));
        }

        return ticks;
    }
}
