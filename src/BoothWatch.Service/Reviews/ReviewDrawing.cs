using System.Globalization;
using BoothWatch.Reviews;
using BoothWatch.Service.Page;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace BoothWatch.Service.Reviews;

/// <summary>Draws a review as SVG: the film from landing to set, and the hours around it.</summary>
/// <param name="text">The unit of the temperatures.</param>
/// <param name="zone">The shop's time zone.</param>
public sealed class ReviewDrawing(DegreeText text, TimeZoneInfo zone)
{
    /// <summary>Share of the height that water, or the verdicts, take at the bottom.</summary>
    private const double LaneShare = 0.27;

    /// <summary>Share of the height that the legend takes at the top.</summary>
    private const double LegendShare = 0.14;

    /// <summary>Below this width the legend takes two lines, pixels.</summary>
    private const int WideLegendPixels = 470;

    private const double LeastSpanDegrees = 4;
    private const int FontPixels = 13;
    private const int PixelsPerTimeMark = 78;
    private static readonly double[] DegreeSteps = [1, 2, 5, 10, 20, 50];
    private static readonly double[] MinuteSteps = [0.25, 0.5, 1, 2, 5, 10, 20, 30, 60, 120];

    /// <summary>The film from landing to set: its temperature against the dew point, and the water in it below.</summary>
    public string Film(ChartRequest request, CoatReview review)
    {
        ArgumentNullException.ThrowIfNull(review);
        ChartTheme theme = ChartTheme.Of(request.Theme);
        using Plot plot = Begin(theme);
        if (review.Film.Count < 2 || review.Figures is not { } figures)
        {
            return Empty(plot, request, theme);
        }

        double[] minutes = [.. review.Film.Select(point => (point.Time - review.Landed).TotalMinutes)];
        double lastMin = minutes[^1];
        double[] film = [.. review.Film.Select(point => text.Convert(point.FilmTemperatureC))];
        double[] dewPoint = [.. review.Film.Select(point => text.Convert(point.DewPointC))];
        double[] air = [.. review.Film.Select(point => text.Convert(point.AirTemperatureC))];

        FillY below = plot.Add.FillY(minutes, [.. film.Zip(dewPoint, Math.Min)], dewPoint);
        below.FillColor = theme.DewPoint.WithAlpha(0.25);
        below.LineWidth = 0;
        below.MarkerSize = 0;
        Line(plot, minutes, air, "air", theme.Air, 1.6f);
        Line(plot, minutes, dewPoint, "dew point", theme.DewPoint, 3);
        Line(plot, minutes, film, "wet film", theme.Film, 2.4f);
        AddWater(plot, theme, review, figures, minutes);
        if (review.Set is { } set)
        {
            Mark(plot, theme, lastMin, $"set {Clock(set)}", leftOf: true);
        }

        SetDegreeAxis(plot, request, [.. film, .. dewPoint, .. air]);
        double step = MinuteSteps.FirstOrDefault(s => lastMin / s <= Math.Max(3, request.Width / PixelsPerTimeMark), MinuteSteps[^1]);
        double[] ticks = [.. Enumerable.Range(0, (int)(lastMin * 1.02 / step) + 1).Select(i => i * step)];
        plot.Axes.Bottom.TickGenerator = new NumericManual(ticks, [.. ticks.Select(t => t.ToString("0.##", CultureInfo.InvariantCulture))]);
        plot.Axes.Bottom.Range.Set(-0.01 * lastMin, 1.02 * lastMin);
        NameBottom(plot, request.Width < WideLegendPixels ? "minutes after it landed" : $"minutes after it landed at {Clock(review.Landed)}");
        return Finish(plot, request, theme);
    }

    /// <summary>The hours around the coat: air, dew point and limit of a coat like this one, coat and set marked, the verdicts below.</summary>
    public string Hours(ChartRequest request, CoatReview review)
    {
        ArgumentNullException.ThrowIfNull(review);
        ChartTheme theme = ChartTheme.Of(request.Theme);
        using Plot plot = Begin(theme);
        request = request with { From = review.Landed - CoatReviewer.Before, To = review.Landed + CoatReviewer.After };
        if (review.Air.Count == 0)
        {
            return Empty(plot, request, theme);
        }

        IReadOnlyList<HistoryPoint?> runs = ChartDrawing.BreakAtGaps([.. review.Air.DistinctBy(point => point.Time.Ticks / TimeSpan.TicksPerMinute).Select(Point)]);
        double[] at = new double[runs.Count];
        for (int i = 0; i < at.Length; i++)
        {
            at[i] = runs[i] is { } point ? (point.Time - request.From.UtcDateTime).TotalSeconds : at[i - 1];
        }

        double[] Values(Func<HistoryPoint, double?> pick) =>
            [.. runs.Select(point => point is not null && pick(point) is { } value ? text.Convert(value) : double.NaN)];
        double[] air = Values(point => point.TemperatureC);
        double[] dewPoint = Values(point => point.DewPointC);
        double[] limit = Values(point => point.DewPointC + point.BlushMarginC);
        double[] piece = Values(point => point.PieceTemperatureC);
        double landedS = (review.Landed - request.From).TotalSeconds;
        if (review.Set is { } set)
        {
            double setS = (set - request.From).TotalSeconds;
            HorizontalSpan open = plot.Add.HorizontalSpan(landedS, setS);
            open.FillColor = theme.Film.WithAlpha(0.22);
            open.LineWidth = 0;
            Mark(plot, theme, setS, $"set {Clock(set)}", leftOf: false);
        }

        Mark(plot, theme, landedS, $"coat {Clock(review.Landed)}", leftOf: true);
        Line(plot, at, air, "air", theme.Air, 1.6f);
        Line(plot, at, dewPoint, "dew point", theme.DewPoint, 3);
        Line(plot, at, limit, "limit of this coat", theme.Critical, 2.4f);
        Line(plot, at, piece, "piece", theme.Film, 1.6f);
        ChartDrawing.AddVerdicts(plot, request, runs);
        SetDegreeAxis(plot, request, [.. air, .. dewPoint, .. limit, .. piece]);
        IReadOnlyList<(DateTimeOffset Time, string Label)> ticks = TimeTicks.Between(request.From, request.To, Math.Max(3, request.Width / PixelsPerTimeMark), zone);
        plot.Axes.Bottom.TickGenerator = new NumericManual(
            [.. ticks.Select(t => (t.Time - request.From).TotalSeconds)], [.. ticks.Select(t => t.Label)]);
        plot.Axes.Bottom.Range.Set(0, (request.To - request.From).TotalSeconds);
        NameBottom(plot, "time of day at the booth, h:min");
        return Finish(plot, request, theme);
    }

    private static HistoryPoint Point(ReviewAirPoint point) => new()
    {
        Time = point.Time.UtcDateTime,
        TemperatureC = point.TemperatureC,
        DewPointC = point.DewPointC,
        PieceTemperatureC = point.PieceTemperatureC,
        BlushMarginC = point.BlushLimitC - point.DewPointC,
        Verdict = point.Verdict,
    };

    private static Plot Begin(ChartTheme theme)
    {
        Plot plot = new();
        plot.Font.Set(SvgText.Font);
        ChartDrawing.Dress(plot, theme);
        plot.Axes.Right.Range.Set(-0.01, 1);
        return plot;
    }

    private static string Finish(Plot plot, ChartRequest request, ChartTheme theme)
    {
        plot.ShowLegend(Alignment.UpperLeft, Orientation.Horizontal);
        return SvgText.Dash(
            SvgText.Loosen(plot.GetSvgXml(request.Width, request.Height)), (theme.Critical.ToHex(), "9 5"), (theme.Film.ToHex(), "2.5 4"));
    }

    private static string Empty(Plot plot, ChartRequest request, ChartTheme theme)
    {
        plot.HideAxesAndGrid();
        plot.Axes.SetLimits(0, 1, 0, 1);
        Text note = plot.Add.Text("not recorded", 0.5, 0.5);
        note.LabelFontColor = theme.Ink;
        note.LabelFontSize = 18;
        note.LabelAlignment = Alignment.MiddleCenter;
        return SvgText.Loosen(plot.GetSvgXml(request.Width, request.Height));
    }

    private static void Line(Plot plot, double[] x, double[] y, string name, Color colour, float width)
    {
        if (y.All(double.IsNaN))
        {
            return;
        }

        Scatter line = plot.Add.ScatterLine(x, y, colour);
        line.LegendText = name;
        line.LineWidth = width;
    }

    // Water stands in the lane at the bottom, on the right axis: 0 at its foot, the most of it (or twice the tolerance) at its head.
    private static void AddWater(Plot plot, ChartTheme theme, CoatReview review, ReviewFigures figures, double[] minutes)
    {
        double most = Math.Max(2 * figures.ToleranceGPerM2, figures.PeakWaterGPerM2);
        double Height(double water) => water / most * LaneShare * 0.86;
        FillY water = plot.Add.FillY(minutes, new double[minutes.Length], [.. review.Film.Select(point => Height(point.WaterGPerM2))]);
        water.Axes.YAxis = plot.Axes.Right;
        water.FillColor = theme.DewPoint.WithAlpha(0.6);
        water.LineWidth = 0;
        water.MarkerSize = 0;
        double hazeAt = Height(figures.ToleranceGPerM2);
        double[] ends = [0, minutes[^1]];
        double[] heights = [hazeAt, hazeAt];
        Scatter haze = plot.Add.ScatterLine(ends, heights, theme.Critical);
        haze.Axes.YAxis = plot.Axes.Right;
        haze.LineWidth = 1.6f;
        haze.LegendText = "haze begins";
        List<(double Water, string Label)> marks = [(0, "0"), (most, most.ToString("0.0#", CultureInfo.InvariantCulture) + " g/m²")];
        plot.Axes.Right.TickGenerator = new NumericManual([.. marks.Select(mark => Height(mark.Water))], [.. marks.Select(mark => mark.Label)]);
    }

    private static void Mark(Plot plot, ChartTheme theme, double x, string words, bool leftOf)
    {
        VerticalLine line = plot.Add.VerticalLine(x, 1.4f, theme.Ink);
        line.LabelText = "";
        Text label = plot.Add.Text(words, x, LaneShare + 0.02);
        label.Axes.YAxis = plot.Axes.Right;
        label.LabelFontColor = theme.Ink;
        label.LabelFontSize = FontPixels;
        label.LabelAlignment = leftOf ? Alignment.LowerRight : Alignment.LowerLeft;
        label.OffsetX = leftOf ? -5 : 5;
    }

    private void SetDegreeAxis(Plot plot, ChartRequest request, double[] values)
    {
        double[] known = [.. values.Where(double.IsFinite)];
        double low = known.Min();
        double high = known.Max();
        double spread = Math.Max(0, LeastSpanDegrees - (high - low)) / 2;
        (low, high) = (low - spread, high + spread);
        double step = DegreeSteps.First(s => (high - low) / s <= 6 || s == DegreeSteps[^1]);
        int first = (int)Math.Ceiling(low / step);
        double[] marks = [.. Enumerable.Range(first, (int)Math.Floor(high / step) - first + 1).Select(i => i * step)];
        plot.Axes.Left.TickGenerator = new NumericManual(marks, [.. marks.Select(mark => mark.ToString("0", CultureInfo.InvariantCulture))]);
        double legendShare = LegendShare * (request.Width < WideLegendPixels ? 1.8 : 1);
        double scale = (high - low) / (1 - LaneShare - 0.08 - legendShare);
        plot.Axes.Left.Range.Set(low - (scale * (LaneShare + 0.08)), high + (scale * legendShare));
        plot.Axes.Left.Label.Text = $"temperature, {text.Unit}";
        plot.Axes.Left.Label.FontSize = FontPixels;
        plot.Axes.Left.Label.Bold = false;
    }

    private static void NameBottom(Plot plot, string words)
    {
        plot.Axes.Bottom.Label.Text = words;
        plot.Axes.Bottom.Label.FontSize = FontPixels;
        plot.Axes.Bottom.Label.Bold = false;
    }

    private string Clock(DateTimeOffset time) => TimeZoneInfo.ConvertTime(time, zone).ToString("HH:mm", CultureInfo.InvariantCulture);
}
