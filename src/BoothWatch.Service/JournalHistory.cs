using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;

namespace BoothWatch.Service;

/// <summary>Shows the journal to the page; here, because the two may not know each other.</summary>
internal sealed class JournalHistory(SeriesQuery series) : IHistory
{
    public IReadOnlyList<HistoryPoint> Read(DateTimeOffset from, DateTimeOffset to, int points) =>
    [
        .. PointsOf(from, to, points).Select(point => new HistoryPoint
        {
            Time = point.Time.UtcDateTime,
            TemperatureC = point.TemperatureC,
            RelativeHumidityPct = point.RelativeHumidityPct,
            LeastRelativeHumidityPct = point.LeastRelativeHumidityPct,
            MostRelativeHumidityPct = point.MostRelativeHumidityPct,
            DewPointC = point.DewPointC,
            PieceTemperatureC = point.PieceTemperatureC,
            LowestFilmTemperatureC = point.LowestFilmTemperatureC,
            BlushMarginC = point.BlushMarginC,
            Verdict = point.Verdict,
        }),
    ];

    private IReadOnlyList<SeriesPoint> PointsOf(DateTimeOffset from, DateTimeOffset to, int points)
    {
        try
        {
            return series.History(from, to, points).Points;
        }
        catch (JournalException trouble)
        {
            throw new HistoryUnavailableException(trouble.Message, trouble);
        }
    }
}
