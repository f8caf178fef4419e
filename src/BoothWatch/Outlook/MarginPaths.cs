namespace BoothWatch.Outlook;

/// <summary>The blush margin along each path of the air, less the margin that is wanted: above 0 the coat may be sprayed.</summary>
public sealed class MarginPaths
{
    private readonly double[][] _roomC;

    private MarginPaths(double[][] roomC) => _roomC = roomC;

    /// <summary>Paths.</summary>
    public int Count => _roomC.Length;

    /// <summary>Steps of each path.</summary>
    public int Steps => _roomC.Length == 0 ? 0 : _roomC[0].Length - 1;

    /// <summary>Margin less wanted margin along one path, °C, now and after each step. Where the film model has no answer, not a number.</summary>
    public IReadOnlyList<double> this[int path] => _roomC[path];

    /// <summary>The margins of paths of the air.</summary>
    /// <param name="paths">The air.</param>
    /// <param name="critical">Critical dew point of the coat.</param>
    /// <param name="wantedC">Wanted margin, °C.</param>
    public static MarginPaths Of(AirPaths paths, CriticalDewPoints critical, double wantedC)
    {
        ArgumentNullException.ThrowIfNull(paths);
        return new MarginPaths([.. Enumerable.Range(0, paths.Count).Select(path => RoomOf(paths[path], critical, wantedC))]);
    }

    /// <summary>
    /// The same with "as it is now" in the place of the days: the margin now plus each change, and minus it. It has the spread of the observed
    /// changes and no opinion of where they go.
    /// </summary>
    public MarginPaths AsItIsNow() => new([.. _roomC, .. _roomC.Select(room => room.Select(value => (2 * room[0]) - value).ToArray())]);

    /// <summary>Margin less wanted margin along one path of the air, °C.</summary>
    public static double[] RoomOf(IReadOnlyList<OutlookAir> path, CriticalDewPoints critical, double wantedC)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(critical);
        double[] room = new double[path.Count];
        for (int step = 0; step < room.Length; step++)
        {
            room[step] = critical.At(path[step].TemperatureC) - path[step].DewPointC - wantedC;
        }

        return room;
    }

    /// <summary>When a path first crosses over: from enough margin to too little, or from too little to enough. Steps, interpolated; infinity: not within the path.</summary>
    /// <remarks>A margin that the film model cannot tell counts as too little: not knowing is never enough.</remarks>
    public static double CrossingOf(IReadOnlyList<double> room)
    {
        ArgumentNullException.ThrowIfNull(room);
        bool isOpen = room[0] >= 0;
        for (int step = 1; step < room.Count; step++)
        {
            if (room[step] >= 0 != isOpen)
            {
                double share = room[step - 1] / (room[step - 1] - room[step]);
                return double.IsFinite(share) ? step - 1 + Math.Clamp(share, 0, 1) : step - (isOpen ? 1 : 0);
            }
        }

        return double.PositiveInfinity;
    }

    /// <summary>When each path first crosses over, in steps, earliest first.</summary>
    public double[] Crossings() => [.. _roomC.Select(CrossingOf).Order()];

    /// <summary>A quantile of the margin less the wanted one after a step, °C; not a number where more than that share has no answer.</summary>
    /// <param name="step">The step.</param>
    /// <param name="share">0 to 1.</param>
    public double Quantile(int step, double share) => QuantileOf([.. _roomC.Select(room => double.IsNaN(room[step]) ? double.NegativeInfinity : room[step]).Order()], share);

    /// <summary>The value that a share of sorted values lies below: the nearest rank, so that infinities stay what they are.</summary>
    public static double QuantileOf(IReadOnlyList<double> sorted, double share)
    {
        ArgumentNullException.ThrowIfNull(sorted);
        return sorted[Math.Clamp((int)Math.Ceiling((share * sorted.Count) - 1e-9) - 1, 0, sorted.Count - 1)];
    }
}
