using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>Pages that fill from the top: a place to write on, which begins a new page when something does not fit.</summary>
internal sealed class PdfSheet : IDisposable
{
    private const double MarginPt = 45;
    private const double FootPt = 34;
    private const double HeadingPt = 34;

    private readonly PdfDocument _document;
    private readonly PageSize _size;
    private XGraphics? _graphics;

    public PdfSheet(PdfDocument document, PageSize size)
    {
        (_document, _size) = (document, size);
        NewPage();
    }

    /// <summary>The present page.</summary>
    public XGraphics Graphics => _graphics!;

    /// <summary>How far down the present page is filled, pt.</summary>
    public double Y { get; set; }

    public double Left { get; } = MarginPt;

    public double Width { get; private set; }

    public double Right => Left + Width;

    private double Bottom { get; set; }

    /// <summary>Begins a new page unless so much room is left; true when it did.</summary>
    public bool Need(double heightPt)
    {
        if (Y + heightPt <= Bottom)
        {
            return false;
        }

        NewPage();
        return true;
    }

    /// <summary>Leaves room, but none at the top of a page.</summary>
    public void Gap(double heightPt) => Y = Y > MarginPt ? Math.Min(Y + heightPt, Bottom) : Y;

    /// <summary>A rule across the page.</summary>
    public void Rule()
    {
        Graphics.DrawLine(PdfInk.Rule, Left, Y, Right, Y);
    }

    /// <summary>The heading of a section, kept together with what follows.</summary>
    public void Heading(string words, double followedByPt)
    {
        Need(HeadingPt + followedByPt);
        Gap(16);
        Paragraph(words, PdfFonts.Bold(11), PdfInk.Text);
        Gap(3);
    }

    /// <summary>A paragraph over the whole width, or from <paramref name="indent"/>.</summary>
    public void Paragraph(string words, XFont font, XBrush brush, double indent = 0)
    {
        foreach (string line in PdfLines.Of(Graphics, words, font, Width - indent))
        {
            double height = PdfLines.Height(font);
            Need(height);
            Graphics.DrawString(line, font, brush, Left + indent, Y + PdfLines.Ascent(font));
            Y += height;
        }
    }

    /// <summary>Ends the writing and adds something to every page.</summary>
    public void Finish(Action<XGraphics, int, int> foot)
    {
        Dispose();
        for (int i = 0; i < _document.PageCount; i++)
        {
            using XGraphics graphics = XGraphics.FromPdfPage(_document.Pages[i], XGraphicsPdfPageOptions.Append);
            foot(graphics, i + 1, _document.PageCount);
        }
    }

    public double FootY => Bottom + 12;

    public void Dispose()
    {
        _graphics?.Dispose();
        _graphics = null;
    }

    private void NewPage()
    {
        _graphics?.Dispose();
        PdfPage page = _document.AddPage();
        page.Size = _size;
        _graphics = XGraphics.FromPdfPage(page);
        Width = page.Width.Point - (2 * MarginPt);
        Bottom = page.Height.Point - MarginPt - FootPt;
        Y = MarginPt;
    }
}
