using BoothWatch.Readings;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Outlook;

/// <summary>The time of day that the booth lives in: that of the shop, or of the scripted day while the booth air is emulated.</summary>
/// <param name="time">The clock and the shop's time zone.</param>
/// <param name="shop">The clock of the scripted day.</param>
/// <param name="sensors">The sensors.</param>
public sealed class OutlookClock(TimeProvider time, ShopClock shop, IEnumerable<ISensor> sensors)
{
    /// <summary>True while the air of the booth is emulated.</summary>
    public bool IsScripted { get; } = sensors.Any(sensor => sensor.IsEmulated && sensor.Quantities.Contains(Quantity.BoothHumidity));

    /// <summary>Seconds of the booth in a second of the clock.</summary>
    public double Speed => IsScripted ? shop.Speed : 1;

    /// <summary>The present.</summary>
    public OutlookTime Now
    {
        get
        {
            DateTimeOffset now = time.GetUtcNow();
            DateTimeOffset local = TimeZoneInfo.ConvertTime(now, time.LocalTimeZone);
            return new OutlookTime(now, DateOnly.FromDateTime(local.DateTime), IsScripted ? shop.Now.TimeOfDay : local.TimeOfDay);
        }
    }

    /// <summary>The clock on the wall some time after a moment, also over a change to or from summer time.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="ahead">How much later, in time of the booth.</param>
    public TimeSpan TimeOfDayAfter(OutlookTime moment, TimeSpan ahead)
    {
        ArgumentNullException.ThrowIfNull(moment);
        return IsScripted
            ? TimeSpan.FromTicks((moment.TimeOfDay + ahead).Ticks % TimeSpan.TicksPerDay)
            : TimeZoneInfo.ConvertTime(moment.Utc + ahead, time.LocalTimeZone).TimeOfDay;
    }
}
