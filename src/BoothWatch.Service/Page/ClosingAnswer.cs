using BoothWatch.Outlook;

namespace BoothWatch.Service.Page;

/// <summary>The time until the blush margin is used up, if it goes on falling, in JSON.</summary>
/// <param name="LeftS">That time, s.</param>
/// <param name="LeastS">With the steepest line that the last minutes allow, s.</param>
/// <param name="MostS">With the flattest, s.</param>
/// <param name="FallCPerH">How fast the margin falls, °C/h.</param>
public sealed record ClosingAnswer(double LeftS, double LeastS, double MostS, double FallCPerH)
{
    /// <summary>The answer for a closing margin.</summary>
    public static ClosingAnswer Of(ClosingMargin closing)
    {
        ArgumentNullException.ThrowIfNull(closing);
        return new(
            Math.Round(closing.Left.TotalSeconds), Math.Round(closing.Least.TotalSeconds), Math.Round(closing.Most.TotalSeconds), Math.Round(closing.FallCPerH, 2));
    }
}
