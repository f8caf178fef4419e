using System.Text.RegularExpressions;
using SkiaSharp;

namespace BoothWatch.Service.Page;

/// <summary>
/// The text of the charts. The drawing library fixes the place of every letter for the one font that it measured with;
/// a browser without that font would set the letters unevenly. So only the place of the first letter is kept, and similar fonts are named.
/// </summary>
internal static partial class SvgText
{
    private static readonly string[] Wanted = ["Liberation Sans", "Arial", "Helvetica", "Noto Sans", "DejaVu Sans"];

    /// <summary>A plain font that this machine has; without any, the library's own choice.</summary>
    public static string Font { get; } =
        Wanted.FirstOrDefault(w => SKFontManager.Default.FontFamilies.Contains(w)) ?? ScottPlot.Fonts.Default;

    /// <summary>Lets the browser set the letters.</summary>
    public static string Loosen(string svg) =>
        Family().Replace(Places().Replace(svg, "$1=\"$2\""), "font-family=\"$1, Liberation Sans, Arial, Helvetica, sans-serif\"");

    /// <summary>
    /// Dashes lines by their colour. The drawing library's own dashes are no use: its SVG writer does not know them and complains on stderr each time.
    /// </summary>
    public static string Dash(string svg, params IEnumerable<(string Colour, string Dashes)> lines) => lines.Aggregate(
        svg,
        (drawn, line) => drawn.Replace($"stroke=\"{line.Colour}\"", $"stroke=\"{line.Colour}\" stroke-dasharray=\"{line.Dashes}\"", StringComparison.OrdinalIgnoreCase));

    [GeneratedRegex("""(?<= )(x|y)="([-0-9.e]+), [^"]*"(?=[^>]*>)""")]
    private static partial Regex Places();

    [GeneratedRegex("font-family=\"([^\"]+)\"")]
    private static partial Regex Family();
}
