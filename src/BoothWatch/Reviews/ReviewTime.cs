using System.Globalization;

namespace BoothWatch.Reviews;

/// <summary>Writes times and lengths of time for people.</summary>
internal static class ReviewTime
{
    /// <summary>A length of time, for example <c>40 s</c>, <c>2.6 min</c>, <c>24 min</c> or <c>2.5 h</c>.</summary>
    public static string Words(double seconds) => seconds switch
    {
        < 90 => string.Create(CultureInfo.InvariantCulture, $"{seconds:0} s"),
        < 600 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.0} min"),
        < 5400 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0} min"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600:0.0} h"),
    };

    /// <summary>The time of day in a zone, for example <c>15:50</c>.</summary>
    public static string OfDay(DateTimeOffset time, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(time, zone).ToString("HH:mm", CultureInfo.InvariantCulture);
}
