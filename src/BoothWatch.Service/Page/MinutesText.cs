using BoothWatch.Outlook;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>Writes the time until the margin is used up, as coarsely as a straight line deserves, and never without its "if".</summary>
internal static class MinutesText
{
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

    private static string Time(TimeSpan time) => DegreeText.Tie(RoughTime.Of(time.TotalSeconds));
}
