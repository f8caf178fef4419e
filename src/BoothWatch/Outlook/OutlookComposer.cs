namespace BoothWatch.Outlook;

/// <summary>Answers the question of the morning, where the shop's own record shows that the answer is worth more than "as it is now".</summary>
public static class OutlookComposer
{
    /// <summary>A day is on record at a time of day when an hour from there is, or what is left of the working day. Own choice.</summary>
    private const int LeastTrace = 60 / AirDay.SlotMinutes;

    private const double Few = 0.1;
    private const double Half = 0.5;
    private const double Most = 0.9;

    /// <summary>The outlook.</summary>
    /// <param name="question">What is asked.</param>
    public static DayOutlook Of(OutlookQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Start.Count == 0)
        {
            return DayOutlook.SilentFor(OutlookSilence.AirUnknown);
        }

        int slot = AirDay.SlotOf(question.TimeOfDay);
        int recent = OnRecord(question, slot, 1);
        int days = recent + Math.Min(OnRecord(question, slot, 1 + question.Window), OutlookScore.LeastMembers);
        double roomC = question.Critical.At(question.Start[0].TemperatureC) - question.Start[0].DewPointC - question.WantedC;
        DayOutlook outlook = new()
        {
            Days = days,
            WantedC = question.WantedC,
            MarginC = roomC + question.WantedC,
            HoldsNow = roomC >= 0,
            DayEnds = question.DayEnds - question.TimeOfDay,
        };
        if (double.IsNaN(roomC))
        {
            return outlook with { Silence = OutlookSilence.MarginUnknown, MarginC = 0 };
        }

        if (outlook.DayEnds < TimeSpan.FromMinutes(OutlookScore.Horizons[0] * AirDay.SlotMinutes))
        {
            return outlook with { Silence = OutlookSilence.DayOver };
        }

        if (days < OutlookQuestion.LeastDays)
        {
            return outlook with { Silence = OutlookSilence.TooFewDays };
        }

        IReadOnlyList<HorizonScore> scores = OutlookScore.Of(question.Past, question.Today, slot, question.Critical, question.WantedC, question.Window);
        AirPaths air = AirPaths.Of(question.Past, question.Today, slot, question.Start, question.Window, HorizonScore.LeastDays, OutlookQuestion.MostSteps);
        MarginPaths paths = MarginPaths.Of(air, question.Critical, question.WantedC);
        int scored = scores.Select(score => score.Margin.Count).DefaultIfEmpty(0).Max();
        if (scored < HorizonScore.LeastDays || paths.Count < HorizonScore.LeastDays)
        {
            // A gap in the record: days enough, but too few that could be forecast from the days before them.
            return outlook with { Silence = OutlookSilence.TooFewDays, Days = Math.Min(days, OutlookScore.LeastMembers + Math.Min(scored, HorizonScore.LeastDays - 1)) };
        }

        (int from, int to) = SpokenRange(scores, paths.Steps);
        outlook = outlook with { Scores = scores, Days = paths.Count };
        return to == 0 ? outlook with { Silence = OutlookSilence.NoBetter }
            : from * AirDay.SlotMinutes > outlook.DayEnds.TotalMinutes ? outlook with { Silence = OutlookSilence.DayOver }
            : Speak(outlook, paths, from, to);
    }

    // Days of one window that are on record at this time of day.
    private static int OnRecord(OutlookQuestion question, int slot, int firstBack)
    {
        int left = AirDay.SlotOf(question.DayEnds) - slot - 1;
        int least = Math.Clamp(left, 1, LeastTrace);
        return Enumerable.Range(firstBack, question.Window).Count(back => question.Past.Trace(question.Today.AddDays(-back), slot, least).Length > least);
    }

    /// <summary>The longest run of neighbouring horizons that all win, within reach; 0 and 0 where none does.</summary>
    internal static (int From, int To) SpokenRange(IReadOnlyList<HorizonScore> scores, int reach)
    {
        (int From, int To) longest = (0, 0);
        int from = 0;
        foreach (HorizonScore score in scores)
        {
            from = score.Wins && score.Step <= reach ? (from == 0 ? score.Step : from) : 0;
            if (from > 0 && (longest.To == 0 || score.Step - from > longest.To - longest.From))
            {
                longest = (from, score.Step);
            }
        }

        return longest;
    }

    private static DayOutlook Speak(DayOutlook outlook, MarginPaths paths, int from, int to)
    {
        double[] crossings = paths.Crossings();
        double Crossed(double step) => crossings.Count(crossing => crossing <= step) / (double)crossings.Length;
        TimeSpan? When(double share)
        {
            double steps = MarginPaths.QuantileOf(crossings, share);
            return steps <= to ? TimeSpan.FromMinutes(Math.Max(steps, from) * AirDay.SlotMinutes) : null;
        }

        DayOutlook spoken = outlook with
        {
            From = TimeSpan.FromMinutes(from * AirDay.SlotMinutes),
            To = TimeSpan.FromMinutes(to * AirDay.SlotMinutes),
            Early = When(Few),
            Middle = When(Half),
            Late = When(Most),
            Band =
            [
                .. Enumerable.Range(from, to - from + 1).Select(step => new OutlookBandPoint(
                    step,
                    Margin(step, Few),
                    Margin(step, Half),
                    Margin(step, Most),
                    outlook.HoldsNow ? 1 - Crossed(step) : Crossed(step))),
            ],
        };
        double crossed = Crossed(spoken.End.TotalMinutes / AirDay.SlotMinutes);
        return spoken with
        {
            ShareAtEnd = outlook.HoldsNow ? 1 - crossed : crossed,
            Word = (outlook.HoldsNow, crossed) switch
            {
                (true, <= Few) => OutlookWord.SprayDay,
                (true, < Half) => OutlookWord.MayClose,
                (true, _) => OutlookWord.Closes,
                (false, <= Few) => OutlookWord.NoSprayDay,
                (false, < Half) => OutlookWord.MayOpen,
                _ => OutlookWord.Opens,
            },
        };

        double Margin(int step, double share) =>
            paths.Quantile(step, share) is var room && double.IsFinite(room) ? room + outlook.WantedC : double.NaN;
    }
}
