using System.Globalization;
using BoothWatch.Outlook;
using BoothWatch.Service.Page;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace BoothWatch.Service.Outlook;

/// <summary>Draws the band of the margin over the day as SVG: eight of ten such days in the shade, half of them below the line, and the margin that is wanted dashed.</summary>
/// <param name="clock">Where times ahead lie on the clock on the wall.</param>
/// <param name="text">The unit of the temperatures.</param>
public sealed class OutlookDrawing(OutlookClock clock, DegreeText text)
{
    private const int FontPixels = 13;
    private const int PixelsPerMark = 70;

    /// <summary>The picture; while the outlook is silent, one that says so.</summary>
    /// <param name="state">The outlook.</param>
    /// <param name="width">Width, pixels.</param>
    /// <param name="height">Height, pixels.</param>
    /// <param name="themeName"><c>dark</c> or <c>light</c>.</param>
    public string Draw(OutlookState state, int width, int height, string themeName)
    {
        ArgumentNullException.ThrowIfNull(state);
        ChartTheme theme = ChartTheme.Of(themeName);
        using Plot plot = new();
        plot.Font.Set(SvgText.Font);
        ChartDrawing.Dress(plot, theme);
        plot.HideLegend();
        plot.Axes.Right.FrameLineStyle.Width = 0;
        OutlookBandPoint[] band = [.. state.Outlook.Band.Where(point => double.IsFinite(point.LowC) && double.IsFinite(point.MiddleC) && double.IsFinite(point.HighC))];
        if (state.Outlook.Word == OutlookWord.Silent || band.Length < 2)
        {
            plot.HideAxesAndGrid();
            plot.Axes.SetLimits(0, 1, 0, 1);
            Write(plot, "no outlook", 0.5, 0.5, theme.Ink, Alignment.MiddleCenter);
            return SvgText.Loosen(plot.GetSvgXml(width, height));
        }

        double[] x = [.. band.Select(point => HoursOf(point.Step))];
        FillY shade = plot.Add.FillY(x, [.. band.Select(point => Y(point.LowC))], [.. band.Select(point => Y(point.HighC))]);
        shade.FillColor = theme.DewPoint.WithAlpha(0.22);
        shade.LineWidth = 0;
        shade.MarkerSize = 0;
        Scatter line = plot.Add.ScatterLine(x, band.Select(point => Y(point.MiddleC)).ToArray());
        (line.LineWidth, line.Color) = (2.6f, theme.DewPoint);
        Marker(plot, Y(state.Outlook.MarginC), theme.DewPoint);
        double wanted = Y(state.Outlook.WantedC);
        double end = x[^1];
        Line(plot, [0, end], [wanted, wanted], theme.Film, 2);
        Line(plot, [0, end], [0, 0], theme.Critical, 2);
        double room = (band.Max(point => Y(point.HighC)) - band.Min(point => Y(point.LowC))) * 0.06;
        double now = Y(state.Outlook.MarginC);
        double low = Math.Min(Math.Min(now, Math.Min(0, wanted)), band.Min(point => Y(point.LowC))) - (2 * room);
        double high = Math.Max(Math.Max(now, wanted), band.Max(point => Y(point.HighC))) + (2 * room);
        plot.Axes.Left.Range.Set(low, high);
        plot.Axes.Bottom.Range.Set(-end / 60, end);
        Write(plot, " wanted", 0, wanted, theme.Film, Alignment.LowerLeft);
        Write(plot, " blush begins", 0, 0, theme.Critical, Alignment.UpperLeft);
        MarkDay(plot, state, end, (low, high), theme);
        SetAxes(plot, state, end, (low, high), (width, height));
        return SvgText.Dash(SvgText.Loosen(plot.GetSvgXml(width, height)), (theme.Film.ToHex(), "7 5"));
    }

    // Between now and the first hour that it speaks of there is nothing to draw.
    private static void Marker(Plot plot, double marginNow, Color color)
    {
        plot.Add.Marker(0, marginNow, MarkerShape.FilledCircle, 11, color);
        Write(plot, "  now", 0, marginNow, color, Alignment.MiddleLeft);
    }

    private static void MarkDay(Plot plot, OutlookState state, double end, (double Low, double High) range, ChartTheme theme)
    {
        double dayEnds = state.Outlook.DayEnds.TotalHours;
        if (dayEnds < end)
        {
            Line(plot, [dayEnds, dayEnds], [range.Low, range.High], theme.Grid, 2);
            Write(plot, "day ends ", dayEnds, range.High, theme.Ink, Alignment.UpperRight);
        }
    }

    private void SetAxes(Plot plot, OutlookState state, double end, (double Low, double High) range, (int Width, int Height) size)
    {
        double fit = Math.Max(2, size.Width / PixelsPerMark);
        double hourStep = new[] { 0.5, 1, 2, 3 }.First(step => end / step <= fit || step == 3);
        TimeSpan now = clock.TimeOfDayAfter(state.At!, TimeSpan.Zero);
        double first = (Math.Ceiling(now.TotalHours / hourStep) * hourStep) - now.TotalHours;
        double[] times = [.. Enumerable.Range(0, 48).Select(i => first + (i * hourStep)).Where(ahead => ahead <= end)];
        plot.Axes.Bottom.TickGenerator = new NumericManual(
            times, [.. times.Select(ahead => RoundMinute(clock.TimeOfDayAfter(state.At!, TimeSpan.FromHours(ahead))).ToString(@"hh\:mm", CultureInfo.InvariantCulture))]);
        double span = range.High - range.Low;
        double step = new[] { 0.5, 1, 2, 5, 10, 20 }.First(s => span / s <= Math.Max(3, size.Height / 45.0) || s == 20);
        double[] marks = [.. Enumerable.Range((int)Math.Ceiling(range.Low / step), Math.Max(1, (int)Math.Floor(range.High / step) - (int)Math.Ceiling(range.Low / step) + 1)).Select(i => i * step)];
        plot.Axes.Left.TickGenerator = new NumericManual(marks, [.. marks.Select(m => m.ToString("0.#", CultureInfo.InvariantCulture).Replace('-', '−'))]);
        plot.Axes.Left.Label.Text = $"blush margin, {text.Unit}";
        plot.Axes.Left.Label.FontSize = FontPixels;
        plot.Axes.Left.Label.Bold = false;
    }

    private static TimeSpan RoundMinute(TimeSpan time) => TimeSpan.FromMinutes(Math.Round(time.TotalMinutes) % (24 * 60));

    private static void Line(Plot plot, double[] x, double[] y, Color color, float width)
    {
        Scatter line = plot.Add.ScatterLine(x, y);
        (line.LineWidth, line.Color) = (width, color);
    }

    private static void Write(Plot plot, string words, double x, double y, Color color, Alignment alignment)
    {
        Text line = plot.Add.Text(words, x, y);
        line.LabelFontColor = color;
        line.LabelFontSize = FontPixels;
        line.LabelAlignment = alignment;
    }

    private static double HoursOf(int step) => step * AirDay.SlotMinutes / 60.0;

    private double Y(double differenceC) => text.ConvertDifference(differenceC);
}
