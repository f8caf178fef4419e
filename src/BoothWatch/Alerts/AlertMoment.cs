using BoothWatch.Verdicts;

namespace BoothWatch.Alerts;

/// <summary>Everything that a rule may look at.</summary>
public sealed record AlertMoment
{
    /// <summary>Monotonic time from any fixed start.</summary>
    public required TimeSpan Now { get; init; }

    /// <summary>The assessment of this moment.</summary>
    public required Assessment Assessment { get; init; }

    /// <summary>The running jobs; null while they are not known.</summary>
    public required IReadOnlyList<WatchedJob>? Jobs { get; init; }

    /// <summary>Where the shop is, for quiet hours and for times in messages.</summary>
    public required TimeZoneInfo Zone { get; init; }

    /// <summary>Wall-clock time, UTC.</summary>
    public DateTimeOffset Time => Assessment.Time;

    /// <summary>A time as the clock in the shop shows it, <c>14:05</c>; with the date when it is another day.</summary>
    public string Clock(DateTimeOffset time)
    {
        DateTimeOffset local = TimeZoneInfo.ConvertTime(time, Zone);
        bool today = local.Date == TimeZoneInfo.ConvertTime(Time, Zone).Date;
        return local.ToString(today ? "HH:mm" : "yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture);
    }
}
