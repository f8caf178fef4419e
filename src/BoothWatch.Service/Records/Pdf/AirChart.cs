using System.Globalization;
using BoothWatch.Records;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;
using PdfSharp.Drawing;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>
/// The air around coats, drawn as vectors: temperatures, humidity below, the verdicts in three lanes, the coats as numbered bands.
/// Each line has its own stroke and its name beside it, and each verdict its own lane, so that it reads without colour.
/// </summary>
internal sealed class AirChart(PdfSheet sheet, RecordText text)
{
    private const double TitlePt = 14;
    private const double BadgePt = 15;
    private const double TemperaturePt = 86;
    private const double HumidityPt = 30;
    private const double LanePt = 6.5;
    private const double GapPt = 6;
    private const double AxisPt = 42;
    private const double NamePt = 50;
    private const double SmallSize = 7;
    private const double LeastSpanDegrees = 4;
    private const double LeastSpanPct = 10;
    private const double NameRowPt = 9;
    private static readonly Verdict[] Lanes = [Verdict.Spray, Verdict.SlowDown, Verdict.Wait];

    /// <summary>Height of a chart, pt.</summary>
    public const double HeightPt = TitlePt + BadgePt + TemperaturePt + GapPt + HumidityPt + GapPt + (3 * LanePt) + 24;

    private static XFont Small => PdfFonts.Regular(SmallSize);

    /// <summary>Draws one stretch.</summary>
    public void Draw(AirStretch stretch, IReadOnlyList<RecordCoat> coats)
    {
        sheet.Need(HeightPt);
        XGraphics graphics = sheet.Graphics;
        string until = text.DateOf(stretch.From) == text.DateOf(stretch.To) ? text.Clock(stretch.To) : text.Moment(stretch.To);
        graphics.DrawString($"{text.Day(stretch.From)}, {text.Clock(stretch.From)} to {until}", PdfFonts.Bold(8), PdfInk.Quiet, sheet.Left, sheet.Y + 8);
        double top = sheet.Y + TitlePt + BadgePt;
        XRect temperatures = new(sheet.Left + AxisPt, top, sheet.Width - AxisPt - NamePt, TemperaturePt);
        XRect humidity = new(temperatures.X, temperatures.Bottom + GapPt, temperatures.Width, HumidityPt);
        XRect lanes = new(temperatures.X, humidity.Bottom + GapPt, temperatures.Width, Lanes.Length * LanePt);

        Coats(stretch, coats, temperatures, lanes.Bottom);
        if (stretch.Points.Count == 0)
        {
            graphics.DrawString("the journal has no air for this time", PdfFonts.Regular(9), PdfInk.Quiet, temperatures, XStringFormats.Center);
        }

        Times(stretch, temperatures.Top, lanes);
        Temperatures(stretch, temperatures);
        Humidity(stretch, humidity);
        Verdicts(stretch, lanes);
        sheet.Y = lanes.Bottom + 24;
    }

    private void Coats(AirStretch stretch, IReadOnlyList<RecordCoat> coats, XRect plot, double bottom)
    {
        double free = double.NegativeInfinity;
        foreach (RecordCoat coat in coats)
        {
            (double from, double to) = (X(stretch, plot, coat.Details.Start), X(stretch, plot, RecordSpan.StopOf(coat.Details)));
            if (to < plot.Left || from > plot.Right)
            {
                continue;
            }

            double width = Math.Max(2.5, Math.Min(to, plot.Right) - from);
            sheet.Graphics.DrawRectangle(new XSolidBrush(PdfInk.Band), from, plot.Top, width, bottom - plot.Top);

            // Badges of coats close together stand side by side.
            double centre = Math.Max(from + (width / 2), free);
            free = centre + 13;
            XRect badge = new(centre - 5.5, plot.Top - 13, 11, 11);
            sheet.Graphics.DrawEllipse(new XPen(PdfInk.Dark, 0.8), XBrushes.White, badge);
            string place = coat.Place.ToString(CultureInfo.InvariantCulture);
            sheet.Graphics.DrawString(place, PdfFonts.Bold(place.Length > 1 ? 6 : SmallSize), PdfInk.Text, badge, XStringFormats.Center);
        }
    }

    private void Temperatures(AirStretch stretch, XRect plot)
    {
        Series[] series =
        [
            new("air", PdfInk.Line(PdfInk.Dark, 1.1), point => point.TemperatureC),
            new("piece", Dashed(PdfInk.Piece, 1.1, 3, 2.2), point => point.PieceTemperatureC),
            new("dew point", PdfInk.Line(PdfInk.Dew, 2), point => point.DewPointC),
        ];
        Panel(stretch, plot, series, value => text.Degrees.Convert(value), LeastSpanDegrees, text.Degrees.Unit);
    }

    private void Humidity(AirStretch stretch, XRect plot) =>
        Panel(stretch, plot, [new("humidity", PdfInk.Line(PdfInk.Soft, 1), point => point.RelativeHumidityPct)], value => value, LeastSpanPct, "%");

    private sealed record Series(string Name, XPen Pen, Func<AirPoint, double?> Pick);

    private static XPen Dashed(XColor colour, double width, params double[] dashes)
    {
        XPen pen = new(colour, width) { LineJoin = XLineJoin.Round };
        pen.DashPattern = dashes;
        return pen;
    }

    private void Panel(AirStretch stretch, XRect plot, Series[] series, Func<double, double> convert, double leastSpan, string unit)
    {
        double[] all = [.. stretch.Points.SelectMany(point => series.Select(line => line.Pick(point))).OfType<double>().Select(convert)];
        double low = all.Length == 0 ? convert(15) : all.Min();
        double high = all.Length == 0 ? convert(25) : all.Max();
        double spread = Math.Max(leastSpan * 0.1, (leastSpan - (high - low)) / 2);
        (low, high) = (low - spread, high + spread);
        double Y(double value) => plot.Bottom - ((convert(value) - low) / (high - low) * plot.Height);

        double most = plot.Height > 60 ? 6 : 3;
        double step = new[] { 1.0, 2, 5, 10, 20, 50 }.First(s => (high - low) / s <= most || s == 50);
        for (double mark = Math.Ceiling(low / step) * step; mark <= high; mark += step)
        {
            double y = plot.Bottom - ((mark - low) / (high - low) * plot.Height);
            sheet.Graphics.DrawLine(new XPen(PdfInk.Hair, 0.3), plot.Left, y, plot.Right, y);
            Right(mark.ToString("0", CultureInfo.InvariantCulture), plot.Left - 4, y + 2.5);
        }

        sheet.Graphics.DrawRectangle(new XPen(PdfInk.Hair, 0.6), plot);
        sheet.Graphics.DrawString(unit, Small, PdfInk.Quiet, sheet.Left, plot.Top + (plot.Height / 2) + 2.5);
        List<(string Name, double Y)> names = [];
        foreach (Series line in series)
        {
            AirPoint? last = null;
            List<XPoint> run = [];
            foreach (AirPoint point in stretch.Points)
            {
                if (line.Pick(point) is not { } value || (last is { } before && (point.Time - before.Time).TotalSeconds > 1.5 * stretch.StepS))
                {
                    Stroke(line.Pen, run);
                }

                if (line.Pick(point) is { } known)
                {
                    run.Add(new XPoint(X(stretch, plot, point.Time.AddSeconds(stretch.StepS / 2.0)), Y(known)));
                    last = point;
                }
            }

            Stroke(line.Pen, run);
            if (last is { } end)
            {
                names.Add((line.Name, Y(line.Pick(end)!.Value)));
            }
        }

        Names(names, plot);
    }

    /// <summary>The names beside the ends of their lines, moved apart where they would overlap.</summary>
    private void Names(List<(string Name, double Y)> names, XRect plot)
    {
        double free = plot.Top;
        foreach ((string name, double y) in names.OrderBy(name => name.Y))
        {
            double at = Math.Max(y, free);
            sheet.Graphics.DrawString(name, Small, PdfInk.Text, plot.Right + 5, at + 2.5);
            free = at + NameRowPt;
        }
    }

    private void Verdicts(AirStretch stretch, XRect lanes)
    {
        for (int lane = 0; lane < Lanes.Length; lane++)
        {
            double y = lanes.Top + (lane * LanePt);
            sheet.Graphics.DrawLine(new XPen(PdfInk.Hair, 0.3), lanes.Left, y + LanePt, lanes.Right, y + LanePt);
            Right(Lanes[lane].Word(), lanes.Left - 4, y + LanePt - 1.2, 6);
            XColor colour = Lanes[lane] switch { Verdict.Spray => PdfInk.Spray, Verdict.SlowDown => PdfInk.Slow, _ => PdfInk.Wait };
            foreach (AirPoint point in stretch.Points.Where(point => point.WorstVerdict == Lanes[lane]))
            {
                double from = X(stretch, lanes, point.Time);
                double to = X(stretch, lanes, point.Time.AddSeconds(stretch.StepS));
                sheet.Graphics.DrawRectangle(new XSolidBrush(colour), from, y + 0.8, to - from + 0.1, LanePt - 1.6);
            }
        }

        sheet.Graphics.DrawString("verdict", Small, PdfInk.Text, lanes.Right + 5, lanes.Top + (lanes.Height / 2) + 2.5);
    }

    private void Times(AirStretch stretch, double top, XRect lanes)
    {
        int most = (int)Math.Max(3, lanes.Width / 60);
        foreach ((DateTimeOffset time, string label) in TimeTicks.Between(stretch.From, stretch.To, most, text.Zone))
        {
            double x = X(stretch, lanes, time);
            sheet.Graphics.DrawLine(new XPen(PdfInk.Hair, 0.3), x, top, x, lanes.Bottom + 3);
            double width = sheet.Graphics.MeasureString(label, Small).Width;
            sheet.Graphics.DrawString(label, Small, PdfInk.Quiet, Math.Min(x - (width / 2), sheet.Right - width), lanes.Bottom + 11);
        }
    }

    private void Stroke(XPen pen, List<XPoint> run)
    {
        if (run.Count == 1)
        {
            sheet.Graphics.DrawEllipse(new XSolidBrush(pen.Color), run[0].X - 1, run[0].Y - 1, 2, 2);
        }
        else if (run.Count > 1)
        {
            sheet.Graphics.DrawLines(pen, [.. run]);
        }

        run.Clear();
    }

    private void Right(string words, double right, double y, double size = SmallSize)
    {
        XFont font = PdfFonts.Regular(size);
        sheet.Graphics.DrawString(words, font, PdfInk.Quiet, right - sheet.Graphics.MeasureString(words, font).Width, y);
    }

    private static double X(AirStretch stretch, XRect plot, DateTimeOffset time) =>
        plot.Left + ((time - stretch.From) / (stretch.To - stretch.From) * plot.Width);
}
