using System.Collections.Concurrent;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>The fonts of the PDF: Inter, under the SIL Open Font License 1.1, out of a package, so that it looks the same on a machine without any font.</summary>
internal static class PdfFonts
{
    private const string Family = "Inter";
    private static readonly ConcurrentDictionary<(double, bool), XFont> Fonts = [];

    static PdfFonts() => GlobalFontSettings.FontResolver = new Resolver();

    public static XFont Regular(double size) => Of(size, bold: false);

    public static XFont Bold(double size) => Of(size, bold: true);

    private static XFont Of(double size, bool bold) =>
        Fonts.GetOrAdd((size, bold), key => new XFont(Family, key.Item1, key.Item2 ? XFontStyleEx.Bold : XFontStyleEx.Regular));

    private sealed class Resolver : IFontResolver
    {
        public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? "Inter-SemiBold.ttf" : "Inter-Regular.ttf");

        public byte[]? GetFont(string faceName) => PackagedFont.Read(faceName);
    }
}
