namespace BoothWatch.Outlook;

/// <summary>Finds where the fan was switched on, and the minutes after it that a room can be learned from.</summary>
public static class FanSteps
{
    /// <summary>The fan must have stood so long before, so that the booth had time to go its own way. Own choice.</summary>
    public const int LeastMinutesOff = 5;

    /// <summary>Minutes after the step that count at most: most booths have gone over by then.</summary>
    public const int MostMinutes = 60;

    private const double LongestGapH = 2.5 / 60;

    /// <summary>The minutes after each time the fan was switched on, up to a silence, an unknown value or the next time it was switched off.</summary>
    /// <param name="minutes">Minutes in order of time.</param>
    public static IReadOnlyList<IReadOnlyList<RoomPoint>> Of(IReadOnlyList<RoomMinute> minutes)
    {
        ArgumentNullException.ThrowIfNull(minutes);
        List<IReadOnlyList<RoomPoint>> steps = [];
        int off = 0;
        for (int i = 0; i < minutes.Count; i++)
        {
            bool isBroken = i > 0 && minutes[i].AtH - minutes[i - 1].AtH > LongestGapH;
            if (minutes[i].FanOn == true && off >= LeastMinutesOff && !isBroken && After(minutes, i) is { Count: >= RoomFit.FewestPoints } points)
            {
                steps.Add(points);
            }

            off = minutes[i].FanOn == false ? (isBroken ? 1 : off + 1) : 0;
        }

        return steps;
    }

    private static List<RoomPoint> After(IReadOnlyList<RoomMinute> minutes, int start)
    {
        List<RoomPoint> points = [];
        for (int i = start; i < minutes.Count && points.Count < MostMinutes; i++)
        {
            if (minutes[i] is not { FanOn: true, BoothRatio: { } booth, IntakeRatio: { } intake } || (i > start && minutes[i].AtH - minutes[i - 1].AtH > LongestGapH))
            {
                break;
            }

            points.Add(new RoomPoint(minutes[i].AtH, booth, intake));
        }

        return points;
    }
}
