namespace BoothWatch.Outlook;

/// <summary>The recorded days of a booth.</summary>
/// <param name="days">The days, in any order, one a date.</param>
public sealed class AirPast(IEnumerable<AirDay> days)
{
    /// <summary>A silence of so many slots is bridged by a straight line; a longer one ends the trace. An hour; own choice.</summary>
    public const int LongestGapSlots = 60 / AirDay.SlotMinutes;

    private readonly Dictionary<DateOnly, AirDay> _days = days.ToDictionary(day => day.Date);

    /// <summary>The dates on record, oldest first.</summary>
    public IEnumerable<DateOnly> Dates => _days.Keys.Order();

    /// <summary>What happened from a slot of a day on: so many steps of one slot each, over midnight where need be, as far as it was recorded.</summary>
    /// <param name="date">The day.</param>
    /// <param name="slot">The slot it starts at.</param>
    /// <param name="mostSteps">Steps at most.</param>
    /// <returns>The air at the start and after each step; empty where the start was not recorded.</returns>
    public OutlookAir[] Trace(DateOnly date, int slot, int mostSteps)
    {
        List<OutlookAir> trace = new(mostSteps + 1);
        int silent = 0;
        for (int step = 0; step <= mostSteps; step++)
        {
            if (At(date, slot + step) is not { } air)
            {
                silent++;
                if (step == 0 || silent > LongestGapSlots)
                {
                    break;
                }

                continue;
            }

            if (silent > 0)
            {
                OutlookAir before = trace[^1];
                for (int i = 1; i <= silent; i++)
                {
                    double share = i / (silent + 1.0);
                    trace.Add(new OutlookAir(
                        before.TemperatureC + (share * (air.TemperatureC - before.TemperatureC)), before.DewPointC + (share * (air.DewPointC - before.DewPointC))));
                }

                silent = 0;
            }

            trace.Add(air);
        }

        return [.. trace];
    }

    private OutlookAir? At(DateOnly date, int slot) =>
        _days.TryGetValue(date.AddDays(slot / AirDay.Slots), out AirDay? day) ? day[slot % AirDay.Slots] : null;
}
