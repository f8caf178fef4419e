namespace BoothWatch.Outlook;

/// <summary>
/// Forecasts every day on record from the days before it alone, at this time of day and an hour to either side, and compares what it said with
/// what came and with what "as it is now" would have said. One day is one comparison.
/// </summary>
public static class OutlookScore
{
    /// <summary>Horizons that are scored, in steps: from half an hour to ten hours. Between two of them the outlook speaks when both win.</summary>
    public static readonly IReadOnlyList<int> Horizons = [3, 6, 9, 12, 18, 24, 30, 36, 42, 48, 54, 60];

    /// <summary>Earlier days that a scored forecast is made of at least.</summary>
    public const int LeastMembers = 5;

    private static readonly int[] Aside = [-60 / AirDay.SlotMinutes, 0, 60 / AirDay.SlotMinutes];

    /// <summary>The score at each horizon that was reached on any day; nearest first.</summary>
    /// <param name="past">The record.</param>
    /// <param name="before">Days before this one count.</param>
    /// <param name="slot">The time of day.</param>
    /// <param name="critical">Critical dew point of the coat.</param>
    /// <param name="wantedC">Wanted margin, °C.</param>
    /// <param name="window">Days looked back, for what each forecast is made of.</param>
    /// <param name="scored">Days looked back, for what is scored; null: the same.</param>
    public static IReadOnlyList<HorizonScore> Of(
        AirPast past, DateOnly before, int slot, CriticalDewPoints critical, double wantedC, int window, int? scored = null)
    {
        ArgumentNullException.ThrowIfNull(past);
        Dictionary<int, List<Scores>> days = [];
        foreach (DateOnly date in past.Dates.Where(date => date < before && date >= before.AddDays(-(scored ?? window))))
        {
            Dictionary<int, List<Scores>> day = [];
            foreach (int origin in Aside.Select(aside => slot + aside).Where(origin => origin is >= 0 and < AirDay.Slots))
            {
                Forecast(past, date, origin, critical, wantedC, window, day);
            }

            foreach ((int step, List<Scores> scores) in day)
            {
                Add(days, step, new Scores(
                    scores.Average(s => s.Crps), scores.Average(s => s.CrpsAsNow), scores.Average(s => s.Brier), scores.Average(s => s.BrierAsNow)));
            }
        }

        return [.. days.OrderBy(entry => entry.Key).Select(entry => ScoreOf(entry.Key, entry.Value))];
    }

    private static void Forecast(
        AirPast past, DateOnly date, int origin, CriticalDewPoints critical, double wantedC, int window, Dictionary<int, List<Scores>> day)
    {
        OutlookAir[] came = past.Trace(date, origin, Horizons[^1]);
        if (came.Length <= Horizons[0])
        {
            return;
        }

        MarginPaths paths = MarginPaths.Of(AirPaths.Of(past, date, origin, came[..1], window, LeastMembers, came.Length - 1), critical, wantedC);
        MarginPaths asNow = paths.AsItIsNow();
        double[] room = MarginPaths.RoomOf(came, critical, wantedC);
        double crossed = MarginPaths.CrossingOf(room);
        double[] crossings = paths.Crossings();
        double[] crossingsAsNow = asNow.Crossings();
        foreach (int step in Horizons.Where(step => step <= paths.Steps))
        {
            double[] members = ValuesAt(paths, step);
            double[] membersAsNow = ValuesAt(asNow, step);
            if (double.IsFinite(room[step]) && members.Length > 0 && membersAsNow.Length > 0)
            {
                Add(day, step, new Scores(
                    Crps.Of(members, room[step]), Crps.Of(membersAsNow, room[step]), Brier(crossings, crossed, step), Brier(crossingsAsNow, crossed, step)));
            }
        }
    }

    private static double[] ValuesAt(MarginPaths paths, int step) =>
        [.. Enumerable.Range(0, paths.Count).Select(path => paths[path][step]).Where(double.IsFinite)];

    private static double Brier(double[] crossings, double crossed, int step)
    {
        double chance = crossings.Count(crossing => crossing <= step) / (double)crossings.Length;
        double miss = chance - (crossed <= step ? 1 : 0);
        return miss * miss;
    }

    private static HorizonScore ScoreOf(int step, List<Scores> days) => new(
        step,
        days.Average(day => day.Crps),
        days.Average(day => day.CrpsAsNow),
        PairedDifference.Of([.. days.Select(day => day.Crps - day.CrpsAsNow)]),
        days.Average(day => day.Brier),
        days.Average(day => day.BrierAsNow),
        PairedDifference.Of([.. days.Select(day => day.Brier - day.BrierAsNow)]));

    private static void Add(Dictionary<int, List<Scores>> lists, int step, Scores scores)
    {
        if (!lists.TryGetValue(step, out List<Scores>? list))
        {
            lists.Add(step, list = []);
        }

        list.Add(scores);
    }

    private readonly record struct Scores(double Crps, double CrpsAsNow, double Brier, double BrierAsNow);
}
