namespace BoothWatch.Outlook;

/// <summary>
/// How the air may go on from now: one path for each earlier day, made of what is measured now and of the change that air temperature and dew
/// point went through together on that day, from the same time of day on. The spread is that of observed changes, no formula.
/// </summary>
public sealed class AirPaths
{
    private readonly OutlookAir[][] _paths;

    private AirPaths(OutlookAir[][] paths, int steps) => (_paths, Steps) = (paths, steps);

    /// <summary>Paths, one for each day.</summary>
    public int Count => _paths.Length;

    /// <summary>Steps of each path, of <see cref="AirDay.SlotMinutes"/>.</summary>
    public int Steps { get; }

    /// <summary>One path: the air now and after each step.</summary>
    public IReadOnlyList<OutlookAir> this[int path] => _paths[path];

    /// <summary>The paths from earlier days; as long as enough days reach, with those days only.</summary>
    /// <param name="past">The record. Only days before <paramref name="today"/> are looked at.</param>
    /// <param name="today">The day that is asked about.</param>
    /// <param name="slot">The time of day that is asked about.</param>
    /// <param name="start">The air now and, where the booth is known to be heading elsewhere, in each later step before any change; the last holds on.</param>
    /// <param name="window">Days looked back.</param>
    /// <param name="leastDays">Days that must reach a step.</param>
    /// <param name="mostSteps">Steps at most.</param>
    public static AirPaths Of(AirPast past, DateOnly today, int slot, IReadOnlyList<OutlookAir> start, int window, int leastDays, int mostSteps)
    {
        ArgumentNullException.ThrowIfNull(past);
        ArgumentNullException.ThrowIfNull(start);
        OutlookAir[][] traces =
        [
            .. Enumerable.Range(1, window).Select(back => past.Trace(today.AddDays(-back), slot, mostSteps)).Where(trace => trace.Length > 1),
        ];
        int[] lengths = [.. traces.Select(trace => trace.Length - 1).OrderDescending()];
        int steps = lengths.Length >= leastDays ? lengths[leastDays - 1] : 0;
        return new AirPaths([.. traces.Where(trace => trace.Length > steps && steps > 0).Select(trace => PathOf(trace, start, steps))], steps);
    }

    private static OutlookAir[] PathOf(OutlookAir[] trace, IReadOnlyList<OutlookAir> start, int steps)
    {
        OutlookAir[] path = new OutlookAir[steps + 1];
        for (int step = 0; step <= steps; step++)
        {
            OutlookAir from = start[Math.Min(step, start.Count - 1)];
            double temperatureC = from.TemperatureC + trace[step].TemperatureC - trace[0].TemperatureC;
            double dewPointC = from.DewPointC + trace[step].DewPointC - trace[0].DewPointC;

            // Air holds no more water than it can: the dew point never lies above the air temperature.
            path[step] = new OutlookAir(temperatureC, Math.Min(dewPointC, temperatureC));
        }

        return path;
    }
}
