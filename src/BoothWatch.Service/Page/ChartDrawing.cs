using System.Globalization;
using BoothWatch.Verdicts;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace BoothWatch.Service.Page;

/// <summary>Draws the past as SVG: air, dew point, critical dew point and film temperature over time, the verdicts in three lanes below.</summary>
/// <param name="text">The unit of the temperatures.</param>
/// <param name="zone">The shop's time zone.</param>
public sealed class ChartDrawing(DegreeText text, TimeZoneInfo zone)
{
    /// <summary>Share of the height that the lanes of the verdicts take.</summary>
    private const double LaneShare = 0.27;

    /// <summary>Height of one line of the legend, pixels.</summary>
    private const int LegendLinePixels = 30;

    /// <summary>Room between the legend and the frame above and the highest line below, pixels.</summary>
    private const int LegendMarginPixels = 16;

    /// <summary>Below this width the legend takes two lines, pixels.</summary>
    private const int WideLegendPixels = 470;

    /// <summary>Size of the text; the page shows the chart at its own size, so that it is never read below 12 pixels.</summary>
    private const int FontPixels = 13;

    /// <summary>Height of the time axis with its labels, pixels.</summary>
    private const int TimeAxisPixels = 58;

    /// <summary>Room for one letter and for one line of small text, pixels.</summary>
    private const int PixelsPerLetter = 8;
    private const int PixelsPerTextLine = 22;

    private const double LeastGapS = 15;
    private const double LeastSpanDegrees = 4;
    private const int PixelsPerTimeMark = 78;
    private static readonly Verdict[] Lanes = [Verdict.Wait, Verdict.SlowDown, Verdict.Spray];

    /// <summary>The chart. Without points it says so and keeps its axes.</summary>
    public string Draw(ChartRequest request, IReadOnlyList<HistoryPoint> points)
    {
        ChartTheme theme = ChartTheme.Of(request.Theme);
        IReadOnlyList<HistoryPoint?> runs = BreakAtGaps(points);
        using Plot plot = new();
        plot.Font.Set(SvgText.Font);
        Dress(plot, theme);

        IPlottable?[] lines =
        [
            AddLine(plot, request, runs, p => p.TemperatureC, "air", theme.Air, 1.6f),
            AddLine(plot, request, runs, p => p.DewPointC, "dew point", theme.DewPoint, 3),
            AddLine(plot, request, runs, p => p.DewPointC + p.BlushMarginC, "blush limit", theme.Critical, 2.4f),
            AddLine(plot, request, runs, p => p.LowestFilmTemperatureC, "coldest film", theme.Film, 2.4f),
        ];
        AddVerdicts(plot, request, runs);
        SetTimeAxis(plot, request);
        SetDegreeAxis(plot, request, points);
        if (lines.All(l => l is null))
        {
            SayEmpty(plot, request, theme);
        }
        else
        {
            plot.ShowLegend(Alignment.UpperLeft, Orientation.Horizontal);
        }

        return SvgText.Dash(
            SvgText.Loosen(plot.GetSvgXml(request.Width, request.Height)),
            (theme.Critical.ToHex(), "9 5"),
            (theme.Film.ToHex(), "2.5 4"));
    }

    /// <summary>The picture for when the past cannot be read: says so, and why.</summary>
    public string DrawTrouble(ChartRequest request, string why)
    {
        ChartTheme theme = ChartTheme.Of(request.Theme);
        using Plot plot = new();
        plot.Font.Set(SvgText.Font);
        Dress(plot, theme);
        plot.HideAxesAndGrid();
        plot.Axes.SetLimits(0, 1, 0, 1);
        plot.Axes.Margins(0, 0);
        Write("The past cannot be read now.", 0.76, 18);
        string[] lines = TextLines.Of(why, Math.Max(20, request.Width / PixelsPerLetter));
        for (int i = 0; i < lines.Length; i++)
        {
            Write(lines[i], 0.76 - ((i + 1.6) * PixelsPerTextLine / request.Height), 13);
        }

        return SvgText.Loosen(plot.GetSvgXml(request.Width, request.Height));

        void Write(string words, double height, int size)
        {
            Text line = plot.Add.Text(words, 0.5, height);
            line.LabelFontColor = theme.Ink;
            line.LabelFontSize = size;
            line.LabelAlignment = Alignment.MiddleCenter;
        }
    }

    /// <summary>Puts a null where the points are further apart than their usual step, so that no line bridges a silence.</summary>
    internal static IReadOnlyList<HistoryPoint?> BreakAtGaps(IReadOnlyList<HistoryPoint> points)
    {
        if (points.Count < 3)
        {
            return points;
        }

        double[] stepsS = [.. points.Zip(points.Skip(1), (a, b) => (b.Time - a.Time).TotalSeconds)];
        double usualS = stepsS.Order().ElementAt(stepsS.Length / 2);
        double gapS = Math.Max(LeastGapS, 3 * usualS);
        List<HistoryPoint?> runs = [points[0]];
        for (int i = 1; i < points.Count; i++)
        {
            if (stepsS[i - 1] > gapS)
            {
                runs.Add(null);
            }

            runs.Add(points[i]);
        }

        return runs;
    }

    internal static void Dress(Plot plot, ChartTheme theme)
    {
        plot.FigureBackground.Color = theme.Ground;
        plot.DataBackground.Color = theme.Ground;
        plot.Axes.Color(theme.Ink);
        plot.Grid.MajorLineColor = theme.Grid;
        plot.Legend.FontColor = theme.Ink;
        plot.Legend.OutlineWidth = 0;
        plot.Legend.ShadowColor = Colors.Transparent;
        plot.Legend.FontSize = FontPixels;
        plot.Legend.Orientation = Orientation.Horizontal;
        plot.Legend.TightHorizontalWrapping = true;
        plot.Legend.BackgroundColor = theme.Ground;
        plot.Axes.Top.FrameLineStyle.Width = 0;
        foreach (IAxis axis in new IAxis[] { plot.Axes.Left, plot.Axes.Right, plot.Axes.Bottom })
        {
            axis.TickLabelStyle.FontSize = FontPixels;
            axis.FrameLineStyle.Color = theme.Grid;
            axis.MajorTickStyle.Length = 0;
            axis.MinorTickStyle.Length = 0;
        }
    }

    private Scatter? AddLine(
        Plot plot, ChartRequest request, IReadOnlyList<HistoryPoint?> runs, Func<HistoryPoint, double?> pick,
        string name, Color color, float width)
    {
        double[] x = new double[runs.Count];
        double[] y = new double[runs.Count];
        bool any = false;
        for (int i = 0; i < runs.Count; i++)
        {
            double? value = runs[i] is { } point ? pick(point) : null;
            any |= value is not null;
            x[i] = runs[i] is { } at ? X(request, at.Time) : x[i - 1];
            y[i] = value is { } c ? text.Convert(c) : double.NaN;
        }

        if (!any)
        {
            return null;
        }

        Scatter line = plot.Add.ScatterLine(x, y, color);
        line.LegendText = name;
        line.LineWidth = width;
        return line;
    }

    internal static void AddVerdicts(Plot plot, ChartRequest request, IReadOnlyList<HistoryPoint?> runs)
    {
        double laneHeight = LaneShare / (Lanes.Length + 0.2);
        for (int start = 0; start < runs.Count;)
        {
            if (runs[start]?.Verdict is not { } verdict)
            {
                start++;
                continue;
            }

            int end = start;
            while (end + 1 < runs.Count && runs[end + 1]?.Verdict == verdict)
            {
                end++;
            }

            // A verdict lasts until the next point, or until it was last seen.
            DateTime until = end + 1 < runs.Count && runs[end + 1] is { } next ? next.Time : runs[end]!.Time;
            double bottom = Array.IndexOf(Lanes, verdict) * laneHeight;
            Rectangle block = plot.Add.Rectangle(X(request, runs[start]!.Time), X(request, until), bottom, bottom + (laneHeight * 0.86));
            block.Axes.YAxis = plot.Axes.Right;
            block.FillColor = ChartTheme.Of(verdict);
            block.LineColor = ChartTheme.Of(verdict);
            start = end + 1;
        }

        plot.Axes.Right.TickGenerator = new NumericManual(
            [.. Lanes.Select((_, i) => (i + 0.43) * laneHeight)],
            [.. Lanes.Select(v => v.Word())]);
        plot.Axes.Right.Range.Set(-0.01, 1);
    }

    private void SetTimeAxis(Plot plot, ChartRequest request)
    {
        IReadOnlyList<(DateTimeOffset Time, string Label)> ticks =
            TimeTicks.Between(request.From, request.To, Math.Max(3, request.Width / PixelsPerTimeMark), zone);
        plot.Axes.Bottom.TickGenerator = new NumericManual(
            [.. ticks.Select(t => X(request, t.Time.UtcDateTime))], [.. ticks.Select(t => t.Label)]);
        plot.Axes.Bottom.Range.Set(0, (request.To - request.From).TotalSeconds);
        bool seconds = ticks.Any(t => t.Label.Count(c => c == ':') == 2);
        string unit = seconds ? "h:min:s" : "h:min";
        plot.Axes.Bottom.Label.Text = request.ShopSpeed == 1 ? $"time of day at the booth, {unit}"
            : IsNarrow(request) ? string.Create(CultureInfo.InvariantCulture, $"clock time (shop runs {request.ShopSpeed:0.#} times faster)")
            : string.Create(CultureInfo.InvariantCulture, $"clock time, {unit} (the shop's day runs {request.ShopSpeed:0.#} times faster)");
        plot.Axes.Bottom.Label.FontSize = FontPixels;
        plot.Axes.Bottom.Label.Bold = false;
    }

    private void SetDegreeAxis(Plot plot, ChartRequest request, IReadOnlyList<HistoryPoint> points)
    {
        double[] all = [.. points
            .SelectMany(p => new[] { p.TemperatureC, p.DewPointC, p.DewPointC + p.BlushMarginC, p.LowestFilmTemperatureC })
            .OfType<double>().Where(double.IsFinite).Select(text.Convert)];
        double low = all.Length == 0 ? text.Convert(10) : all.Min();
        double high = all.Length == 0 ? text.Convert(30) : all.Max();
        double spread = Math.Max(0, LeastSpanDegrees - (high - low)) / 2;
        (low, high) = (low - spread, high + spread);
        double span = high - low;

        double step = new[] { 1.0, 2, 5, 10, 20, 50 }.First(s => span / s <= 6 || s == 50);
        double[] marks = [.. Enumerable.Range((int)Math.Ceiling(low / step), (int)Math.Floor(high / step) - (int)Math.Ceiling(low / step) + 1).Select(i => i * step)];
        plot.Axes.Left.TickGenerator = new NumericManual(marks, [.. marks.Select(m => m.ToString("0", CultureInfo.InvariantCulture))]);

        // The lines keep clear of the lanes below and of the legend above.
        int legendLines = IsNarrow(request) ? 2 : 1;
        double legendShare = Math.Min(0.4, ((legendLines * LegendLinePixels) + LegendMarginPixels) / (double)Math.Max(1, request.Height - TimeAxisPixels));
        double scale = span / (1 - LaneShare - 0.03 - legendShare);
        plot.Axes.Left.Range.Set(low - (scale * (LaneShare + 0.03)), high + (scale * legendShare));
        plot.Axes.Left.Label.Text = $"temperature, {text.Unit}";
        plot.Axes.Left.Label.FontSize = FontPixels;
        plot.Axes.Left.Label.Bold = false;
    }

    private static void SayEmpty(Plot plot, ChartRequest request, ChartTheme theme)
    {
        Text note = plot.Add.Text("nothing recorded yet", (request.To - request.From).TotalSeconds / 2, 0.6);
        note.Axes.YAxis = plot.Axes.Right;
        note.LabelFontColor = theme.Ink;
        note.LabelFontSize = 18;
        note.LabelAlignment = Alignment.MiddleCenter;
    }

    private static bool IsNarrow(ChartRequest request) => request.Width < WideLegendPixels;

    private static double X(ChartRequest request, DateTime time) => (time - request.From.UtcDateTime).TotalSeconds;
}
