using System.Globalization;
using BoothWatch.Outlook;

namespace BoothWatch.Service.Page;

/// <summary>Writes the time until the margin is used up, as coarsely as a straight line deserves, and never without its "if".</summary>
internal static class MinutesText
{
    private const string NoBreak = "\u00a0";

    /// <summary>The time alone, to be read from afar, for example <c>25 min</c>; empty when there is nothing to say.</summary>
    public static string Mark(ClosingMargin? closing) => closing is null ? "" : Time(closing.Left);

    /// <summary>What the time means, its range, and how fast the margin falls; empty when there is nothing to say.</summary>
    public static string Meaning(ClosingMargin? closing, DegreeText text)
    {
        if (closing is null)
        {
            return "";
        }

        string fall = $"it falls {text.Difference(closing.FallCPerH).TrimStart('+')} an hour";
        (string least, string most) = (Time(closing.Least), Time(closing.Most));
        string range = least == most ? "" : $" ({least} to {most})";
        return $"until the blush margin is used up, if this went on{range}; {fall}";
    }

    // Whole minutes below ten, then fives, then tens: a straight line knows no better.
    private static string Time(TimeSpan time)
    {
        double minutes = time.TotalMinutes;
        double step = minutes < 10 ? 1 : minutes < 60 ? 5 : 10;
        int whole = (int)(Math.Round(minutes / step) * step);
        return whole switch
        {
            < 1 => $"under 1{NoBreak}min",
            < 60 => string.Create(CultureInfo.InvariantCulture, $"{whole}{NoBreak}min"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{whole / 60}{NoBreak}h") + (whole % 60 == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" {whole % 60}{NoBreak}min")),
        };
    }
}
