using System.Globalization;

namespace BoothWatch.Verdicts;

/// <summary>Writes an estimated time as coarsely as it deserves: whole minutes below ten, then fives, then tens.</summary>
public static class RoughTime
{
    /// <summary>The time, for example <c>25 min</c>, <c>1 h 10 min</c> or <c>under 1 min</c>.</summary>
    /// <param name="seconds">The time, s, zero or more.</param>
    public static string Of(double seconds) => Written(Minutes(seconds));

    /// <summary>Whole minutes in the same words.</summary>
    /// <param name="minutes">Minutes, zero or more.</param>
    public static string Written(int minutes) => minutes switch
    {
        < 1 => "under 1 min",
        < 60 => string.Create(CultureInfo.InvariantCulture, $"{minutes} min"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} h") + (minutes % 60 == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" {minutes % 60} min")),
    };

    /// <summary>The same in minutes, rounded in the same steps; 0 below one.</summary>
    public static int Minutes(double seconds)
    {
        double minutes = seconds / 60;
        double step = minutes < 10 ? 1 : minutes < 60 ? 5 : 10;
        return (int)(Math.Round(minutes / step) * step);
    }
}
