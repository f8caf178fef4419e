using System.Diagnostics;
using System.Globalization;
using BoothWatch.Air;
using BoothWatch.Outlook;
using BoothWatch.Tests.Outlook;

namespace BoothWatch.Benchmarks.Outlook;

/// <summary>
/// The score table of docs/outlook.md: the outlook against "as it is now" on whole files of open weather data, for the margin of a clear coat and for the
/// bare dew point; how a trend fares; and what the outlook would have said on each day with nothing but the days before it.
/// </summary>
internal static class OutlookScores
{
    private const double WantedC = 2;
    private const double HeatedToC = 21;
    private static readonly int[] Hours = [1, 2, 4, 6, 8, 10];

    public static int Print(IReadOnlyList<string> files, TextWriter output)
    {
        foreach (string file in files)
        {
            foreach ((string place, AirPast past) in OpenWeather.Read(file))
            {
                Print(place, past, output);
            }
        }

        return 0;
    }

    private static void Print(string place, AirPast past, TextWriter output)
    {
        CriticalDewPoints clear = ClearCoat.CriticalDewPoints();
        double heatedC = ClearCoat.FindC(HeatedToC);
        CriticalDewPoints heated = new(_ => heatedC);
        output.WriteLine($"\n{place}: {past.Dates.Count()} days. The margin of a clear coat outdoors, where air and dew point both change:\n");
        Table(past, clear, output);
        output.WriteLine("\nThe same coat in a booth that is heated to 21 °C all day, where the dew point alone changes:\n");
        Table(past, heated, output);
        output.WriteLine();
        Spoken("outdoors", past, clear, output);
        Spoken("heated", past, heated, output);
        Following(past, output);
    }

    private static void Table(AirPast past, CriticalDewPoints critical, TextWriter output)
    {
        int days = past.Dates.Count();
        DateOnly end = past.Dates.Last().AddDays(1);
        output.WriteLine("| from | ahead | outlook | as it is now | better by | beyond chance | Brier: outlook | as it is now | with 15 days | with 60 days | trend of an hour |");
        output.WriteLine("| --- | --- | --: | --: | --: | --- | --: | --: | --: | --: | --: |");
        foreach (int hour in new[] { 8, 11, 14 })
        {
            IReadOnlyList<HorizonScore> Scores(int window) => OutlookScore.Of(past, end, hour * 6, critical, WantedC, window, days);
            (IReadOnlyList<HorizonScore> usual, IReadOnlyList<HorizonScore> half, IReadOnlyList<HorizonScore> twice) = (Scores(OutlookQuestion.UsualWindow), Scores(15), Scores(60));
            foreach (int ahead in Hours)
            {
                HorizonScore At(IReadOnlyList<HorizonScore> scores) => scores.First(score => score.Step == ahead * 6);
                HorizonScore score = At(usual);
                (double trend, double asNow) = Trend(past, hour * 6, ahead * 6, critical);
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"| {hour:00}:00 | {ahead} h | {score.Crps:0.00} °C | {score.CrpsAsNow:0.00} °C | {Better(score.Crps, score.CrpsAsNow)} | {(score.Wins ? "yes" : "no")} | {score.Brier:0.000} | {score.BrierAsNow:0.000} | {Better(At(half).Crps, At(half).CrpsAsNow)} | {Better(At(twice).Crps, At(twice).CrpsAsNow)} | {Better(trend, asNow)} |"));
            }
        }
    }

    /// <summary>Mean absolute error of the margin when the line through the last hour goes on, and of "as it is now".</summary>
    private static (double Trend, double AsNow) Trend(AirPast past, int slot, int ahead, CriticalDewPoints critical)
    {
        List<(double Trend, double AsNow)> errors = [];
        foreach (DateOnly date in past.Dates)
        {
            OutlookAir[] trace = past.Trace(date, slot - 6, 6 + ahead);
            if (trace.Length == 7 + ahead)
            {
                double[] room = MarginPaths.RoomOf(trace, critical, 0);
                errors.Add((Math.Abs(room[6] + ((room[6] - room[0]) / 6 * ahead) - room[^1]), Math.Abs(room[6] - room[^1])));
            }
        }

        return (errors.Average(e => e.Trend), errors.Average(e => e.AsNow));
    }

    /// <summary>Every day of the file as if it were today.</summary>
    private static void Spoken(string booth, AirPast past, CriticalDewPoints critical, TextWriter output)
    {
        foreach (int hour in new[] { 8, 11, 14 })
        {
            (int asked, int spoke) = (0, 0);
            List<double> differences = [];
            List<double> asNows = [];
            (int said, int came) closes = (0, 0);
            (int said, int held) sprayDays = (0, 0);
            long ticks = 0;
            foreach (DateOnly today in past.Dates.Skip(OutlookQuestion.UsualWindow))
            {
                OutlookAir[] came = past.Trace(today, hour * 6, OutlookQuestion.MostSteps);
                if (came.Length <= OutlookQuestion.MostSteps)
                {
                    continue;
                }

                OutlookQuestion question = new()
                {
                    Past = past,
                    Today = today,
                    TimeOfDay = TimeSpan.FromHours(hour),
                    DayEnds = TimeSpan.FromHours(18),
                    Start = came[..1],
                    Critical = critical,
                    WantedC = WantedC,
                };
                long start = Stopwatch.GetTimestamp();
                DayOutlook outlook = OutlookComposer.Of(question);
                ticks += Stopwatch.GetTimestamp() - start;
                asked++;
                if (outlook.Word == OutlookWord.Silent)
                {
                    continue;
                }

                spoke++;
                double[] room = MarginPaths.RoomOf(came, critical, WantedC);
                int end = (int)(outlook.End.TotalMinutes / AirDay.SlotMinutes);
                bool crossed = MarginPaths.CrossingOf(room) <= end;
                closes = outlook.Word == OutlookWord.Closes ? (closes.said + 1, closes.came + (crossed ? 1 : 0)) : closes;
                sprayDays = outlook.Word == OutlookWord.SprayDay ? (sprayDays.said + 1, sprayDays.held + (crossed ? 0 : 1)) : sprayDays;
                MarginPaths paths = MarginPaths.Of(
                    AirPaths.Of(past, today, hour * 6, came[..1], OutlookQuestion.UsualWindow, HorizonScore.LeastDays, OutlookQuestion.MostSteps), critical, WantedC);
                MarginPaths asNow = paths.AsItIsNow();
                int step = (int)(outlook.To.TotalMinutes / AirDay.SlotMinutes);
                if (!double.IsFinite(room[step]))
                {
                    continue;
                }

                double score = Crps.Of([.. Enumerable.Range(0, paths.Count).Select(path => paths[path][step]).Where(double.IsFinite)], room[step]);
                double scoreAsNow = Crps.Of([.. Enumerable.Range(0, asNow.Count).Select(path => asNow[path][step]).Where(double.IsFinite)], room[step]);
                differences.Add(score - scoreAsNow);
                asNows.Add(scoreAsNow);
            }

            PairedDifference paired = PairedDifference.Of(differences);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"- {booth}, asked at {hour:00}:00 of {asked} days: spoke on {spoke}; there {(asNows.Count == 0 ? 0 : -100 * paired.Mean / asNows.Average()):0} % better than 'as it is now' at its farthest hour ({(paired.Wins ? "beyond chance" : "not beyond chance")}); said 'spray day' {sprayDays.said} times, held {sprayDays.held}; said 'closes' {closes.said} times, closed {closes.came}; {Stopwatch.GetElapsedTime(0, ticks).TotalMilliseconds / Math.Max(1, asked):0.0} ms each"));
        }
    }

    /// <summary>A well-mixed booth of five changes an hour whose fan draws in the weather of the file: foretold from the intake, and "as it is now".</summary>
    private static void Following(AirPast past, TextWriter output)
    {
        RoomModel room = new(5, 5, 5, 0, RoomModel.FewestSteps);
        Dictionary<int, List<(double Followed, double AsNow)>> errors = [];
        foreach (DateOnly date in past.Dates)
        {
            double[] outdoors = [.. past.Trace(date, 0, AirDay.Slots - 1).Select(air => MoistAir.FromDewPoint(50, air.DewPointC, 101_325).HumidityRatio)];
            double[] booth = new double[outdoors.Length];
            for (int i = 0; i < booth.Length; i++)
            {
                booth[i] = i == 0 ? outdoors[0] : room.RatioAfter(booth[i - 1], (outdoors[i - 1] + outdoors[i]) / 2, AirDay.SlotMinutes / 60.0);
            }

            foreach (int ahead in new[] { 1, 2, 3, 6, 12 })
            {
                for (int i = 18; i + ahead < booth.Length; i++)
                {
                    double followed = room.RatioAfter(booth[i], outdoors[i], ahead * AirDay.SlotMinutes / 60.0);
                    (errors.TryGetValue(ahead, out var list) ? list : errors[ahead] = []).Add((Math.Abs(followed - booth[i + ahead]), Math.Abs(booth[i] - booth[i + ahead])));
                }
            }
        }

        output.WriteLine("- a booth of 5 changes an hour, foretold from its intake, is nearer than 'as it is now' by: " + string.Join(", ", errors.Select(entry =>
            string.Create(CultureInfo.InvariantCulture, $"{entry.Key * AirDay.SlotMinutes} min {Better(entry.Value.Average(e => e.Followed), entry.Value.Average(e => e.AsNow))}"))));
    }

    private static string Better(double score, double reference) => string.Create(CultureInfo.InvariantCulture, $"{100 * (1 - (score / reference)):0;−0;0} %");
}
