namespace BoothWatch.Outlook;

/// <summary>The air of one day of the shop on a grid of its local time of day. What was not recorded is not a number.</summary>
/// <remarks>
/// Local time, because sun, heating and work go by it. On a day that the clocks change one hour is empty, or the mean of two.
/// </remarks>
public sealed class AirDay
{
    /// <summary>Length of a slot, minutes. Short beside the half hour that is the shortest horizon, long beside the noise of a sensor. Own choice.</summary>
    public const int SlotMinutes = 10;

    /// <summary>Slots of a day.</summary>
    public const int Slots = 24 * 60 / SlotMinutes;

    private readonly float[] _temperatureC = new float[Slots];
    private readonly float[] _dewPointC = new float[Slots];

    /// <summary>A day without any record yet.</summary>
    /// <param name="date">Its date in the shop.</param>
    public AirDay(DateOnly date)
    {
        Date = date;
        Array.Fill(_temperatureC, float.NaN);
        Array.Fill(_dewPointC, float.NaN);
    }

    /// <summary>Its date in the shop.</summary>
    public DateOnly Date { get; }

    /// <summary>Slots on record.</summary>
    public int Recorded => _temperatureC.Count(float.IsFinite);

    /// <summary>The air of a slot; null where it was not recorded.</summary>
    /// <param name="slot">0 for the first ten minutes of the day, below <see cref="Slots"/>.</param>
    public OutlookAir? this[int slot]
    {
        get => float.IsFinite(_temperatureC[slot]) ? new OutlookAir(_temperatureC[slot], _dewPointC[slot]) : null;
        set
        {
            bool isKnown = value is { } air && double.IsFinite(air.TemperatureC) && double.IsFinite(air.DewPointC);
            _temperatureC[slot] = isKnown ? (float)value!.Value.TemperatureC : float.NaN;
            _dewPointC[slot] = isKnown ? (float)Math.Min(value!.Value.DewPointC, value.Value.TemperatureC) : float.NaN;
        }
    }

    /// <summary>The slot that a time of day lies in.</summary>
    public static int SlotOf(TimeSpan timeOfDay) => Math.Clamp((int)(timeOfDay.TotalMinutes / SlotMinutes), 0, Slots - 1);
}
