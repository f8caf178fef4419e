using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>One moment of the past, as the chart and <c>/api/history</c> show it. A figure that was not known is null.</summary>
public sealed record HistoryPoint
{
    /// <summary>Time, UTC.</summary>
    public required DateTime Time { get; init; }

    /// <summary>Air temperature, °C.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>Relative humidity, %.</summary>
    public double? RelativeHumidityPct { get; init; }

    /// <summary>Least relative humidity of the span that the point stands for, %.</summary>
    public double? LeastRelativeHumidityPct { get; init; }

    /// <summary>Most relative humidity of the span that the point stands for, %.</summary>
    public double? MostRelativeHumidityPct { get; init; }

    /// <summary>Dew point, °C.</summary>
    public double? DewPointC { get; init; }

    /// <summary>Temperature of the piece, °C.</summary>
    public double? PieceTemperatureC { get; init; }

    /// <summary>Lowest temperature that the drying film would reach, °C.</summary>
    public double? LowestFilmTemperatureC { get; init; }

    /// <summary>Blush margin, °C: the dew point may rise by that much.</summary>
    public double? BlushMarginC { get; init; }

    /// <summary>The verdict of that moment.</summary>
    public Verdict? Verdict { get; init; }
}
