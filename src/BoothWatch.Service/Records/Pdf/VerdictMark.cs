using BoothWatch.Verdicts;
using PdfSharp.Drawing;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>The sign of a verdict: a circle with a tick, a triangle with a mark, a square with two bars. Its word always stands beside it.</summary>
internal static class VerdictMark
{
    /// <summary>Draws the sign into a square.</summary>
    public static void Draw(XGraphics graphics, Verdict verdict, double x, double y, double size)
    {
        XPoint At(double across, double down) => new(x + (across * size), y + (down * size));
        XPen light = PdfInk.Line(XColors.White, size * 0.13);
        switch (verdict)
        {
            case Verdict.Spray:
                graphics.DrawEllipse(new XSolidBrush(PdfInk.Spray), x, y, size, size);
                graphics.DrawLines(light, [At(0.27, 0.53), At(0.44, 0.69), At(0.74, 0.35)]);
                break;
            case Verdict.SlowDown:
                graphics.DrawPolygon(new XPen(PdfInk.Dark, size * 0.06), new XSolidBrush(PdfInk.Slow), [At(0.5, 0.04), At(0.98, 0.94), At(0.02, 0.94)], XFillMode.Winding);
                XPen dark = PdfInk.Line(PdfInk.Dark, size * 0.12);
                graphics.DrawLine(dark, At(0.5, 0.38), At(0.5, 0.64));
                graphics.DrawLine(dark, At(0.5, 0.79), At(0.5, 0.8));
                break;
            default:
                graphics.DrawRectangle(new XSolidBrush(PdfInk.Wait), x + (size * 0.03), y + (size * 0.03), size * 0.94, size * 0.94);
                graphics.DrawLine(light, At(0.36, 0.3), At(0.36, 0.7));
                graphics.DrawLine(light, At(0.64, 0.3), At(0.64, 0.7));
                break;
        }
    }
}
