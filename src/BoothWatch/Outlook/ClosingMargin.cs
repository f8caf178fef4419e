namespace BoothWatch.Outlook;

/// <summary>
/// How long the blush margin lasts if it goes on falling as it did over the last minutes. A straight line and no forecast; whoever shows it says so.
/// </summary>
/// <param name="Left">Time until the margin is used up.</param>
/// <param name="Least">The same with the steepest line that the points allow.</param>
/// <param name="Most">The same with the flattest.</param>
/// <param name="FallCPerH">How fast the margin falls, °C/h, above 0.</param>
public sealed record ClosingMargin(TimeSpan Left, TimeSpan Least, TimeSpan Most, double FallCPerH)
{
    /// <summary>How far back the line looks: long enough to see through a door that opens, short enough to notice a front of rain. Own choice.</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(20);

    /// <summary>The window is cut into so many parts and the mean of each is one point, so that second-by-second noise counts once. Own choice.</summary>
    public const int Parts = 10;

    /// <summary>So many parts must have data, the newest among them.</summary>
    public const int FewestParts = 8;

    /// <summary>The slope must exceed its standard error by this factor: for ten parts, about one false word in a hundred windows of mere noise.</summary>
    public const double Significance = 3;

    /// <summary>The margin must have fallen by this much over the window, °C: less is within what a humidity sensor wanders. Own choice.</summary>
    public const double LeastFallC = 0.3;

    /// <summary>Farther ahead a straight line says nothing. Own choice.</summary>
    public static readonly TimeSpan Farthest = TimeSpan.FromHours(4);

    /// <summary>Standard errors from the line to the steepest and the flattest one: about 95 % with ten parts.</summary>
    private const double Coverage = 2;

    /// <summary>The time left; null when the margin is used up already, does not fall, does not fall beyond its noise, or is not known for long enough.</summary>
    /// <param name="points">Margin over time: seconds on any steady clock, °C; in order of time.</param>
    /// <param name="nowS">The present on the same clock, s.</param>
    /// <param name="window">How far back to look; null: <see cref="Window"/>. What is scaled along with it are the times of the answer, not the limits.</param>
    public static ClosingMargin? Of(IEnumerable<(double AtS, double MarginC)> points, double nowS, TimeSpan? window = null)
    {
        ArgumentNullException.ThrowIfNull(points);
        double windowS = (window ?? Window).TotalSeconds;
        double speed = Window.TotalSeconds / windowS;
        (double X, double Y)[] parts =
        [
            .. points
                .Where(p => p.AtS > nowS - windowS && p.AtS <= nowS && double.IsFinite(p.MarginC))
                .GroupBy(p => Math.Min(Parts - 1, (int)((nowS - p.AtS) / windowS * Parts)))
                .OrderByDescending(part => part.Key)
                .Select(part => ((part.Average(p => p.AtS) - nowS) * speed, part.Average(p => p.MarginC))),
        ];
        bool isFresh = parts.Length > 0 && parts[^1].X > -2 * Window.TotalSeconds / Parts;
        if (parts.Length < FewestParts || !isFresh)
        {
            return null;
        }

        StraightLine line = StraightLine.Through([.. parts.Select(p => p.X)], [.. parts.Select(p => p.Y)]);
        double fallCPerS = -line.Slope;
        double errorCPerS = line.AdjustedSlopeError;
        double leftC = line.At(0);
        if (!(fallCPerS > Significance * errorCPerS) || !(fallCPerS * Window.TotalSeconds >= LeastFallC) || !(leftC > 0))
        {
            return null;
        }

        TimeSpan left = TimeSpan.FromSeconds(leftC / fallCPerS);
        return left > Farthest ? null : new ClosingMargin(
            left,
            TimeSpan.FromSeconds(leftC / (fallCPerS + (Coverage * errorCPerS))),
            TimeSpan.FromSeconds(leftC / (fallCPerS - (Coverage * errorCPerS))),
            fallCPerS * 3600);
    }
}
