using System.Globalization;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>A moment in the scripted shop.</summary>
/// <param name="Day">Days since the start, from 0.</param>
/// <param name="TimeOfDay">Time of day, 08:00 to 17:00.</param>
public readonly record struct ShopTime(int Day, TimeSpan TimeOfDay)
{
    /// <summary>The time of day for people, for example <c>13:05</c>.</summary>
    public override string ToString() => TimeOfDay.ToString(@"hh\:mm", CultureInfo.InvariantCulture);
}
