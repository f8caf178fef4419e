using PdfSharp.Drawing;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>Colours and strokes of the PDF. Colour helps and is never alone: all reads in black and white.</summary>
internal static class PdfInk
{
    public static readonly XColor Dark = XColor.FromArgb(0x1b, 0x1f, 0x24);
    public static readonly XColor Soft = XColor.FromArgb(0x55, 0x5c, 0x66);
    public static readonly XColor Hair = XColor.FromArgb(0xc4, 0xc9, 0xd0);
    public static readonly XColor Pale = XColor.FromArgb(0xee, 0xf0, 0xf2);
    public static readonly XColor Band = XColor.FromArgb(0xdf, 0xe3, 0xe8);
    public static readonly XColor Dew = XColor.FromArgb(0x15, 0x5a, 0x9c);
    public static readonly XColor Piece = XColor.FromArgb(0x9a, 0x4a, 0x12);
    public static readonly XColor Spray = XColor.FromArgb(0x1e, 0x8a, 0x63);
    public static readonly XColor Slow = XColor.FromArgb(0xff, 0xc8, 0x3d);
    public static readonly XColor Wait = XColor.FromArgb(0xc3, 0x2f, 0x24);

    public static readonly XBrush Text = new XSolidBrush(Dark);
    public static readonly XBrush Quiet = new XSolidBrush(Soft);

    public static XPen Line(XColor colour, double width) => new(colour, width) { LineJoin = XLineJoin.Round, LineCap = XLineCap.Round };

    public static XPen Rule => new(Hair, 0.5);
}
