using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Page.Tests;

/// <summary>A past of whole minutes without end: warm by day, damp by night. Longer spans come in longer steps, as from the journal.</summary>
internal sealed class MinuteHistory : IHistory
{
    /// <summary>The air at a time, °C.</summary>
    public static double TemperatureC(DateTime time) => 20 + (3 * Math.Sin(Phase(time)));

    public IReadOnlyList<HistoryPoint> Read(DateTimeOffset from, DateTimeOffset until, int points)
    {
        int stepMinutes = new[] { 1, 2, 5, 10, 30, 60 }.First(m => (until - from).TotalMinutes / m <= points || m == 60);
        List<HistoryPoint> made = [];
        long step = TimeSpan.TicksPerMinute * stepMinutes;
        for (long tick = from.UtcTicks / step * step; tick < until.UtcTicks; tick += step)
        {
            DateTime time = new(tick, DateTimeKind.Utc);
            double margin = 1.2 + (2.5 * Math.Sin(Phase(time) * 1.3));
            made.Add(new HistoryPoint
            {
                Time = time,
                TemperatureC = TemperatureC(time),
                DewPointC = 12 + (4 * Math.Cos(Phase(time) * 1.3)),
                PieceTemperatureC = TemperatureC(time) - 1,
                LowestFilmTemperatureC = TemperatureC(time) - 6,
                BlushMarginC = margin,
                Verdict = margin > 1.5 ? Verdict.Spray : margin > 0 ? Verdict.SlowDown : Verdict.Wait,
            });
        }

        return made;
    }

    private static double Phase(DateTime time) => time.TimeOfDay.TotalHours / 24 * 2 * Math.PI;
}
