using System.Globalization;

namespace BoothWatch.Service.Assessing;

/// <summary>Asks Linux whether a hardware clock, which runs on its own battery, set the system clock at boot.</summary>
/// <remarks>
/// Source: Linux, Documentation/ABI/testing/sysfs-class-rtc: <c>hctosys</c> is 1 where the kernel set the system time from this
/// clock at boot; <c>since_epoch</c> is its time, s. A clock whose battery is dead reads wrong or refuses to be read.
/// </remarks>
internal static class BatteryClock
{
    /// <summary>True when a hardware clock set the system clock and has a plausible date itself; false when none did, or this is no Linux.</summary>
    /// <param name="sysfs">Where sysfs is, as a rule <c>/sys</c>.</param>
    /// <param name="earliest">An earlier date is not plausible.</param>
    public static bool SetTheSystemClock(string sysfs, DateTimeOffset earliest)
    {
        try
        {
            return Directory.EnumerateDirectories(Path.Combine(sysfs, "class", "rtc"), "rtc*").Any(clock =>
                Read(clock, "hctosys") == 1 && Read(clock, "since_epoch") >= earliest.ToUnixTimeSeconds());
        }
        catch (Exception none) when (none is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static long? Read(string clock, string attribute)
    {
        try
        {
            return long.TryParse(File.ReadAllText(Path.Combine(clock, attribute)), NumberStyles.Integer, CultureInfo.InvariantCulture, out long value)
                ? value
                : null;
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
