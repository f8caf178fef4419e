namespace BoothWatch.Alerts;

/// <summary>The hours in which nobody wants to be disturbed, by the clock in the shop; over midnight when <paramref name="To"/> is earlier than <paramref name="From"/>.</summary>
/// <param name="From">When they begin.</param>
/// <param name="To">When they end; the same as <paramref name="From"/> for no quiet hours at all.</param>
/// <remarks>
/// When the clock is put forward over the begin or the end, that is the moment of the change; when it is put back and shows the
/// begin or the end twice, the first time counts.
/// </remarks>
public sealed record QuietHours(TimeOnly From, TimeOnly To)
{
    /// <summary>When the quiet hours around a time end; null when the time is in none.</summary>
    /// <param name="time">The time.</param>
    /// <param name="zone">Where the shop is.</param>
    public DateTimeOffset? EndOf(DateTimeOffset time, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        if (From == To)
        {
            return null;
        }

        DateOnly today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time, zone).DateTime);
        for (int day = -1; day <= 0; day++)
        {
            DateOnly begins = today.AddDays(day);
            DateTimeOffset from = InstantOf(begins.ToDateTime(From), zone);
            DateTimeOffset to = InstantOf((From < To ? begins : begins.AddDays(1)).ToDateTime(To), zone);
            if (from <= time && time < to)
            {
                return to;
            }
        }

        return null;
    }

    private static DateTimeOffset InstantOf(DateTime local, TimeZoneInfo zone)
    {
        if (zone.IsInvalidTime(local))
        {
            // Within the hour that is left out: the change itself, which is the first time after it that the clock shows.
            DateTime after = local;
            do
            {
                after = after.AddMinutes(1);
            }
            while (zone.IsInvalidTime(after));
            after = new DateTime(after.Ticks - (after.Ticks % TimeSpan.TicksPerMinute), DateTimeKind.Unspecified);
            return new DateTimeOffset(after, zone.GetUtcOffset(after)).ToUniversalTime();
        }

        // Of two offsets the greater one belongs to the first time.
        TimeSpan offset = zone.IsAmbiguousTime(local) ? zone.GetAmbiguousTimeOffsets(local).Max() : zone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset).ToUniversalTime();
    }
}
