namespace BoothWatch.Checks;

/// <summary>Whether two sensors of one quantity in one place grow apart, long before they are so far apart that neither is believed.</summary>
/// <remarks>
/// Means of hours, so that a gust that reaches one of them first does not count; the middle of the hours of a week, so that a day with the door
/// open beside one of them does not either. Half of the limit of disagreement is slow divergence: own choice. It does not say which of them is wrong.
/// </remarks>
/// <param name="LastWeek">Median difference of the last week, in the unit of the quantity.</param>
/// <param name="FirstWeek">That of the first week on record; null where it is not <see cref="LeastApart"/> earlier.</param>
/// <param name="Limit">Difference from which they disagree.</param>
public sealed record Divergence(double LastWeek, double? FirstWeek, double Limit)
{
    /// <summary>Hours that a week must have at least.</summary>
    public const int LeastHours = 12;

    /// <summary>The first and the last week must be so far apart to tell a change.</summary>
    public static readonly TimeSpan LeastApart = TimeSpan.FromDays(28);

    private static readonly TimeSpan Week = TimeSpan.FromDays(7);

    /// <summary>Change from the first week to the last; null when not known.</summary>
    public double? Change => LastWeek - FirstWeek;

    /// <summary>True when they are more than half of the limit apart, or have moved apart by so much.</summary>
    public bool IsSlow => Math.Abs(LastWeek) > Limit / 2 || Math.Abs(Change ?? 0) > Limit / 2;

    /// <summary>The divergence at a time; null with too few hours.</summary>
    /// <param name="hours">The hours on record, in any order.</param>
    /// <param name="now">The time.</param>
    /// <param name="limit">Difference from which they disagree.</param>
    public static Divergence? Of(IReadOnlyCollection<HourDifference> hours, DateTimeOffset now, double limit)
    {
        ArgumentNullException.ThrowIfNull(hours);
        double[] last = [.. hours.Where(hour => hour.Hour > now - Week && hour.Hour <= now).Select(hour => hour.Mean).Order()];
        if (last.Length < LeastHours)
        {
            return null;
        }

        DateTimeOffset start = hours.Min(hour => hour.Hour);
        double[] first = [.. hours.Where(hour => hour.Hour < start + Week).Select(hour => hour.Mean).Order()];
        bool isEarlier = first.Length >= LeastHours && now - start >= LeastApart + Week;
        return new Divergence(Median(last), isEarlier ? Median(first) : null, limit);
    }

    private static double Median(double[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
}
