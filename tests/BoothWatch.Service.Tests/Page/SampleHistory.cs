using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Page;

/// <summary>Some minutes in which rain comes, ending now, with a silence of two minutes in the middle.</summary>
public sealed class SampleHistory(TimeProvider time) : IHistory
{
    public IReadOnlyList<HistoryPoint> Read(DateTimeOffset from, DateTimeOffset until, int points)
    {
        List<HistoryPoint> made = [];
        DateTime end = time.GetUtcNow().UtcDateTime;
        for (int i = 0; i < 360; i++)
        {
            if (i is > 150 and < 175)
            {
                continue;
            }

            double rain = Math.Clamp((i - 120) / 180.0, 0, 1);
            double margin = 3.6 - (5.4 * rain);
            made.Add(new HistoryPoint
            {
                Time = end.AddSeconds((i - 359) * 5),
                TemperatureC = 22.4 - (0.8 * rain) + (0.2 * Math.Sin(i / 9.0)),
                RelativeHumidityPct = 54 + (36 * rain),
                DewPointC = 12.7 + (7.6 * rain) + (0.25 * Math.Sin(i / 7.0)),
                PieceTemperatureC = 20.5,
                LowestFilmTemperatureC = 16.2 - (0.4 * rain),
                BlushMarginC = margin,
                Verdict = margin > 1.5 ? Verdict.Spray : margin > 0 ? Verdict.SlowDown : Verdict.Wait,
            });
        }

        return made;
    }
}
