using PdfSharp.Drawing;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>Breaks text into lines of a width.</summary>
internal static class PdfLines
{
    private const double LineSpacing = 1.38;
    private const double AscentShare = 1.02;

    /// <summary>The lines; a word longer than a line is broken where it must.</summary>
    public static IReadOnlyList<string> Of(XGraphics graphics, string words, XFont font, double widthPt)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(graphics, word, font, widthPt)))
        {
            string longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length == 0 || graphics.MeasureString(longer, font).Width <= widthPt)
            {
                line = longer;
            }
            else
            {
                lines.Add(line);
                line = word;
            }
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    /// <summary>The text, cut with an ellipsis where it is longer than a line.</summary>
    public static string Cut(XGraphics graphics, string words, XFont font, double widthPt)
    {
        string cut = words;
        while (cut.Length > 1 && graphics.MeasureString(cut == words ? cut : cut + "…", font).Width > widthPt)
        {
            cut = cut[..^1].TrimEnd();
        }

        return cut == words ? cut : cut + "…";
    }

    public static double Height(XFont font) => font.Size * LineSpacing;

    public static double Ascent(XFont font) => font.Size * AscentShare;

    private static IEnumerable<string> Pieces(XGraphics graphics, string word, XFont font, double widthPt)
    {
        while (word.Length > 1 && graphics.MeasureString(word, font).Width > widthPt)
        {
            int length = word.Length - 1;
            while (length > 1 && graphics.MeasureString(word[..length], font).Width > widthPt)
            {
                length--;
            }

            length -= length > 1 && char.IsHighSurrogate(word[length - 1]) ? 1 : 0;
            yield return word[..length];
            word = word[length..];
        }

        yield return word;
    }
}
