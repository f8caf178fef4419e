using BoothWatch.Verdicts;
using System.Globalization;
using BoothWatch.Outlook;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Outlook;

/// <summary>Says the outlook in words: the mark that is read from afar, what it means, and what it rests on.</summary>
/// <param name="clock">Where times ahead lie on the clock on the wall.</param>
/// <param name="text">The unit of the temperatures.</param>
public sealed class OutlookWords(OutlookClock clock, DegreeText text)
{
    private const string NoBreak = "\u00a0";
    private const string AsItIsNow = "‘as it is now’";

    /// <summary>The time of day of a step ahead.</summary>
    internal TimeSpan TimeOfDay(OutlookState state, int step) => clock.TimeOfDayAfter(state.At!, TimeSpan.FromMinutes(step * AirDay.SlotMinutes));

    /// <summary>The mark, a few letters: <c>until about 13:00</c>.</summary>
    public string Mark(OutlookState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        DayOutlook outlook = state.Outlook;
        return outlook.Word switch
        {
            OutlookWord.SprayDay when outlook.CoversTheDay => "Spray day",
            OutlookWord.SprayDay => $"to {Clock(state, outlook.End)} at least",
            OutlookWord.MayClose => $"likely to {Clock(state, outlook.End)}",
            OutlookWord.Closes when outlook.Middle <= outlook.From => $"less than {Length(outlook.From)}",
            OutlookWord.Closes => $"until about {About(state, outlook.Middle!.Value)}",
            OutlookWord.Opens when outlook.Middle <= outlook.From => $"within {Length(outlook.From)}",
            OutlookWord.Opens => $"from about {About(state, outlook.Middle!.Value)}",
            OutlookWord.MayOpen => "Perhaps later",
            OutlookWord.NoSprayDay => outlook.MarginC > 0 ? "No full margin today" : "No spray day",
            _ => "No outlook",
        };
    }

    /// <summary>What the mark means, with its number; while silent, plainly why.</summary>
    public string Meaning(OutlookState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        DayOutlook outlook = state.Outlook;
        if (outlook.Word == OutlookWord.Silent)
        {
            return Silence(state);
        }

        string end = outlook.CoversTheDay ? $"to the end of the day, {Clock(state, outlook.End)}," : $"to {Clock(state, outlook.End)}";
        return outlook.Word switch
        {
            OutlookWord.SprayDay => $"the margin holds {end} in {OfTen(outlook.ShareAtEnd)}{Left(state)}",
            OutlookWord.MayClose => $"the margin holds {end} in {OfTen(outlook.ShareAtEnd)}{MayCloseFrom(state)}",
            OutlookWord.Closes => $"the margin closes before {Clock(state, outlook.End)} in {OfTen(1 - outlook.ShareAtEnd)}{MayCloseFrom(state)}{Left(state)}",
            OutlookWord.Opens or OutlookWord.MayOpen =>
                $"the margin is too small now, and comes to suffice before {Clock(state, outlook.End)} in {OfTen(outlook.ShareAtEnd)}{From(state)}",
            _ => $"the margin is too small now, and comes to suffice before {Clock(state, outlook.End)} in {OfTen(outlook.ShareAtEnd)}",
        };
    }

    /// <summary>What it rests on; empty while it is silent.</summary>
    public string Basis(OutlookState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        DayOutlook outlook = state.Outlook;
        string days = state.IsInvented ? "invented days of the demo shop" : "days of this shop";
        return outlook.Word == OutlookWord.Silent
            ? ""
            : $"from the last {outlook.Days} {days}, for {Cup(state.RetarderPct, state.IsLoaded)} on a piece as warm as the air";
    }

    /// <summary>Everything else there is to say, a sentence each.</summary>
    public IEnumerable<string> Rest(OutlookState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        DayOutlook outlook = state.Outlook;
        if (state.Step is { } step)
        {
            yield return Step(step);
        }

        if (outlook.Word == OutlookWord.Silent)
        {
            if (outlook.Silence is OutlookSilence.TooFewDays or OutlookSilence.NoBetter)
            {
                yield return $"Where there is no outlook, take it {AsItIsNow}, and look again: the light follows the air second by second.";
            }

            yield break;
        }

        yield return $"Margin now {text.Difference(outlook.MarginC)} for a piece as warm as the air; the verdict wants {text.Difference(outlook.WantedC)}. A colder piece has less.";
        yield return $"It speaks from {Length(outlook.From)} to {Length(outlook.To)} ahead, where on {outlook.Scores.Max(score => score.Margin.Count)} forecast days of this record it was better than {AsItIsNow} beyond chance."
            + (outlook.CoversTheDay ? "" : $" It says nothing of the time after {Clock(state, outlook.To)}.");
        if (state.WithMore is { Word: not OutlookWord.Silent } more)
        {
            string mark = Mark(state with { Outlook = more });
            if (mark != Mark(state))
            {
                yield return $"With {RetarderWord(state.MoreRetarderPct)} instead of {RetarderWord(state.RetarderPct)}: {mark[..1].ToLowerInvariant()}{mark[1..]}.";
            }
        }

        if (state.Room is { } room)
        {
            yield return string.Create(CultureInfo.InvariantCulture,
                $"With the fan on, the booth follows the air it draws in at {room.ChangesPerH:0.#} changes an hour ({room.LeastPerH:0.#} to {room.MostPerH:0.#}), learned from {room.Steps} times the fan was switched on.");
        }

        yield return "An outlook is no verdict and no weather forecast: rain on the way can ruin a coat within the hour. The light and the verdict decide at the moment of spraying, and the exhaust stays on.";
    }

    private string Step(AirStep step)
    {
        string what = step.AtIntake ? "outdoors" : "in the booth";
        string way = step.ByRatio > 0 ? "damper" : "drier";
        string by = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(step.ByRatio) * 1000:0.0} g of water a kg of air");
        return step.HeadingForDewPointC is { } headingC
            ? $"The air has just become {way} {what}, by {by}. The booth is heading for a dew point of {text.Temperature(headingC)}, and the outlook starts from there."
            : $"The air has just become {way} {what}, by {by}. {(step.AtIntake ? "The booth follows while the fan runs; how fast is not learned here yet. " : "")}Earlier days say little of such a step.";
    }

    private static string Silence(OutlookState state) => state.Outlook.Silence switch
    {
        OutlookSilence.AirUnknown => "the air of the booth is not known",
        OutlookSilence.MarginUnknown => "the film model has no answer in this air",
        OutlookSilence.TooFewDays => string.Create(CultureInfo.InvariantCulture, $"{state.Outlook.Days} of the {OutlookQuestion.LeastDays} days needed are on record at this time of day"),
        OutlookSilence.NoBetter => $"on this shop’s record it does no better than {AsItIsNow}",
        OutlookSilence.DayOver => "the working day is nearly over",
        OutlookSilence.NoRecord => $"the journal cannot be read ({state.Trouble})",
        OutlookSilence.Failed => $"it could not be worked out ({state.Trouble})",
        OutlookSilence.VerdictWaits => $"the verdict waits, and not for the margin: {state.Barrier}",
        OutlookSilence.SwitchedOff => "it is switched off in the settings",
        _ => "not worked out yet since the start",
    };

    private string MayCloseFrom(OutlookState state) =>
        state.Outlook.Early is not { } early ? ""
        : early <= state.Outlook.From ? $"; it may close before {About(state, state.Outlook.From)}"
        : $"; it may close from {About(state, early)}";

    private string From(OutlookState state) =>
        state.Outlook.Early is { } early && early > state.Outlook.From ? $", from {About(state, early)} at the earliest" : "";

    private static string Left(OutlookState state)
    {
        DayOutlook outlook = state.Outlook;
        string Time(TimeSpan? time) => time is not { } t ? "over " + Length(outlook.To) : t <= outlook.From ? "under " + Length(outlook.From) : Length(t);
        return outlook.Middle is { } middle && middle > outlook.From
            ? $"; {Time(middle)} left ({Time(outlook.Early)} to {Time(outlook.Late)})"
            : outlook.Middle is null ? $"; {Length(outlook.End)} left at least" : "";
    }

    private static string Cup(double retarderPct, bool isLoaded) =>
        isLoaded ? $"the cup with {RetarderWord(retarderPct)}" : $"a cup with up to {RetarderWord(retarderPct)}";

    private static string RetarderWord(double pct) => pct == 0 ? "no retarder" : string.Create(CultureInfo.InvariantCulture, $"{pct:0.#}{NoBreak}% retarder");

    private static string OfTen(double share) => Math.Round(share * 10) switch
    {
        0 => "hardly any such day",
        10 => "nearly every such day",
        var tens => string.Create(CultureInfo.InvariantCulture, $"{tens:0} of 10 such days"),
    };

    // Down to ten minutes: it is said to hold until then.
    private string Clock(OutlookState state, TimeSpan ahead) =>
        TimeSpan.FromMinutes(Math.Floor((clock.TimeOfDayAfter(state.At!, ahead).TotalMinutes / 10) + 1e-6) * 10).ToString(@"hh\:mm", CultureInfo.InvariantCulture);

    // No finer than a forecast of so far ahead deserves.
    private string About(OutlookState state, TimeSpan ahead)
    {
        double step = ahead.TotalHours < 2 ? 10 : 30;
        double minutes = Math.Round(clock.TimeOfDayAfter(state.At!, ahead).TotalMinutes / step) * step % (24 * 60);
        return TimeSpan.FromMinutes(minutes).ToString(@"hh\:mm", CultureInfo.InvariantCulture);
    }

    // To ten minutes: the outlook knows no finer.
    private static string Length(TimeSpan time) => DegreeText.Tie(RoughTime.Written((int)(Math.Round(time.TotalMinutes / 10) * 10)));
}
