using System.Collections.Immutable;
using System.Globalization;
using BoothWatch.Limits;
using BoothWatch.Service.Page;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace BoothWatch.Service.Limits;

/// <summary>
/// Draws the evidence as SVG: each coat a mark over its margin, blushed ones stacked above, the others below, between them the chance of
/// blushing with its band, the likely threshold, and the margin that is wanted.
/// </summary>
/// <param name="text">The unit of the temperatures.</param>
public sealed class LimitDrawing(DegreeText text)
{
    private const int FontPixels = 13;
    private const int PixelsPerMark = 62;
    private const float DotPixels = 9;
    private const float LeastDotPixels = 4;
    private const int AxisPixels = 60;

    /// <summary>The chance takes the middle of the height; the marks have the lanes above and below it, in the units of the chance.</summary>
    private const double Lane = 0.34;
    private const double Gap = 0.06;
    private const double Row = 0.052;

    /// <summary>The picture.</summary>
    /// <param name="state">What is known.</param>
    /// <param name="rules">The rules.</param>
    /// <param name="inForceC">Required margin in force, °C.</param>
    /// <param name="width">Width, pixels.</param>
    /// <param name="height">Height, pixels.</param>
    /// <param name="themeName"><c>dark</c> or <c>light</c>.</param>
    public string Draw(LimitState state, LimitRules rules, double inForceC, int width, int height, string themeName)
    {
        ChartTheme theme = ChartTheme.Of(themeName);
        using Plot plot = new();
        plot.Font.Set(SvgText.Font);
        Dress(plot, theme);
        if (state is not { Limit: { } limit, Evidence: { } evidence })
        {
            plot.HideAxesAndGrid();
            plot.Axes.SetLimits(0, 1, 0, 1);
            Write(plot, state.Trouble is null ? "not known yet" : "not known now", 0.5, 0.5, theme.Ink, Alignment.MiddleCenter);
            return SvgText.Loosen(plot.GetSvgXml(width, height));
        }

        (double low, double high) = (state.Curve[0].MarginC, state.Curve[^1].MarginC);
        AddCurve(plot, state.Curve, theme);
        AddWanted(plot, evidence, rules, inForceC, theme);
        AddThreshold(plot, limit, theme);
        (int PerRow, double PixelsPerUnit) room = (Math.Max(12, (int)((width - 80) / DotPixels)), (height - AxisPixels) / (1 + (2 * Lane)));
        AddDots(plot, [.. evidence.Coats.Where(coat => coat.Blushed).Select(coat => coat.MarginC)], (low, high), room, 1 + Gap, Row, MarkerShape.FilledTriangleUp, theme.Critical);
        AddDots(plot, [.. evidence.Coats.Where(coat => !coat.Blushed).Select(coat => coat.MarginC)], (low, high), room, -Gap, -Row, MarkerShape.OpenCircle, theme.DewPoint);
        Write(plot, $"blushed: {limit.Blushed}", X(high), 1 + Lane - 0.03, theme.Ink, Alignment.UpperRight);
        Write(plot, $"did not blush: {limit.Coats - limit.Blushed}", X(high), -Lane + 0.03, theme.Ink, Alignment.LowerRight);
        SetAxes(plot, (low, high), width);
        return SvgText.Dash(SvgText.Loosen(plot.GetSvgXml(width, height)), (theme.Film.ToHex(), "7 5"));
    }

    private static void Dress(Plot plot, ChartTheme theme)
    {
        plot.FigureBackground.Color = theme.Ground;
        plot.DataBackground.Color = theme.Ground;
        plot.Axes.Color(theme.Ink);
        plot.Grid.MajorLineColor = theme.Grid;
        plot.HideLegend();
        plot.Axes.Top.FrameLineStyle.Width = 0;
        plot.Axes.Right.FrameLineStyle.Width = 0;
        foreach (IAxis axis in new IAxis[] { plot.Axes.Left, plot.Axes.Bottom })
        {
            axis.TickLabelStyle.FontSize = FontPixels;
            axis.FrameLineStyle.Color = theme.Grid;
            axis.MajorTickStyle.Length = 0;
            axis.MinorTickStyle.Length = 0;
        }
    }

    private void AddCurve(Plot plot, ImmutableArray<BlushCurvePoint> curve, ChartTheme theme)
    {
        double[] x = [.. curve.Select(point => X(point.MarginC))];
        FillY band = plot.Add.FillY(x, [.. curve.Select(point => point.Low)], [.. curve.Select(point => point.High)]);
        band.FillColor = theme.Air.WithAlpha(0.16);
        band.LineWidth = 0;
        band.MarkerSize = 0;
        Scatter line = plot.Add.ScatterLine(x, [.. curve.Select(point => point.Likely)], theme.Air);
        line.LineWidth = 2.4f;
    }

    // What the verdict wants of a coat whose margin is as uncertain as is usual here.
    private void AddWanted(Plot plot, LimitEvidence evidence, LimitRules rules, double inForceC, ChartTheme theme)
    {
        double[] uncertainties = [.. evidence.Coats.Select(coat => coat.UncertaintyC).Order()];
        double usual = uncertainties.Length > 0 ? uncertainties[uncertainties.Length / 2] : 1;
        double wanted = inForceC + (rules.CoverageFactor * usual);
        Scatter line = plot.Add.ScatterLine(new[] { X(wanted), X(wanted) }, new[] { -Lane, 1 + Lane }, theme.Film);
        line.LineWidth = 2;
        Write(plot, "wanted", X(wanted) + (0.06 * text.ConvertDifference(1)), 0.93, theme.Film, Alignment.MiddleLeft);
    }

    private void AddThreshold(Plot plot, ShopLimit limit, ChartTheme theme)
    {
        double[] half = [0.5, 0.5];
        double[] ends = [X(limit.Threshold.LowC), X(limit.Threshold.HighC)];
        Scatter bar = plot.Add.ScatterLine(ends, half, theme.Critical);
        bar.LineWidth = 5;
        plot.Add.Marker(X(limit.Threshold.LikelyC), 0.5, MarkerShape.FilledDiamond, 15, theme.Critical);
    }

    // A dot plot: marks that would lie on each other are stacked away from the curve.
    private void AddDots(
        Plot plot, double[] marginsC, (double LowC, double HighC) range, (int PerRow, double PixelsPerUnit) room, double first, double step, MarkerShape shape, Color color)
    {
        if (marginsC.Length == 0)
        {
            return;
        }

        double bin = (range.HighC - range.LowC) / room.PerRow;
        var bins = marginsC.GroupBy(margin => (int)Math.Floor((Math.Clamp(margin, range.LowC, range.HighC) - range.LowC) / bin)).ToList();
        double most = bins.Max(group => group.Count());
        double row = step * Math.Min(1, (Lane - Gap - 0.02) / Math.Abs(step) / most);
        List<double> xs = [];
        List<double> ys = [];
        foreach (IGrouping<int, double> group in bins)
        {
            int place = 0;
            foreach (double margin in group.Order())
            {
                xs.Add(X(range.LowC + ((group.Key + 0.5) * bin)));
                ys.Add(first + (row * place++));
            }
        }

        Markers dots = plot.Add.Markers(xs.ToArray(), ys.ToArray(), shape, (float)Math.Clamp(0.95 * Math.Abs(row) * room.PixelsPerUnit, LeastDotPixels, DotPixels), color);
        dots.MarkerLineWidth = 1.4f;
    }

    private void SetAxes(Plot plot, (double LowC, double HighC) range, int width)
    {
        double low = X(range.LowC);
        double high = X(range.HighC);
        double step = new[] { 0.5, 1, 2, 5, 10 }.First(s => (high - low) / s <= Math.Max(3, width / PixelsPerMark) || s == 10);
        double[] marks = [.. Enumerable.Range((int)Math.Ceiling(low / step), (int)Math.Floor(high / step) - (int)Math.Ceiling(low / step) + 1).Select(i => i * step)];
        plot.Axes.Bottom.TickGenerator = new NumericManual(marks, [.. marks.Select(m => m.ToString("0.#", CultureInfo.InvariantCulture).Replace('-', '−'))]);
        plot.Axes.Left.TickGenerator = new NumericManual([0, 0.25, 0.5, 0.75, 1], ["0", "25", "50", "75", "100"]);
        plot.Axes.Bottom.Range.Set(low, high);
        plot.Axes.Left.Range.Set(-Lane, 1 + Lane);
        foreach ((IAxis axis, string words) in new (IAxis, string)[] { (plot.Axes.Bottom, $"blush margin by the model, {text.Unit}"), (plot.Axes.Left, "chance of blushing, %") })
        {
            axis.Label.Text = words;
            axis.Label.FontSize = FontPixels;
            axis.Label.Bold = false;
        }
    }

    private static void Write(Plot plot, string words, double x, double y, Color color, Alignment alignment)
    {
        Text line = plot.Add.Text(words, x, y);
        line.LabelFontColor = color;
        line.LabelFontSize = FontPixels;
        line.LabelAlignment = alignment;
    }

    private double X(double differenceC) => text.ConvertDifference(differenceC);
}
