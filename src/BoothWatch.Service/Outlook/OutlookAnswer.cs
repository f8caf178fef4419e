using System.Globalization;
using BoothWatch.Outlook;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Outlook;

/// <summary>The outlook as JSON. Temperatures in °C, lengths of time in hours of the booth; what is not known, or not said, is null. An outlook is no verdict.</summary>
public sealed record OutlookAnswer
{
    /// <summary>When it was made; null before the first.</summary>
    public required DateTimeOffset? Time { get; init; }

    /// <summary>The time of day then, by the clock on the wall, for example <c>09:05</c>; null before the first.</summary>
    public required string? TimeOfDay { get; init; }

    /// <summary>The day in a word: <c>silent</c>, <c>spray-day</c>, <c>may-close</c>, <c>closes</c>, <c>opens</c>, <c>may-open</c>, <c>no-spray-day</c>.</summary>
    public required OutlookWord Word { get; init; }

    /// <summary>Why it is silent; <c>none</c> when it speaks.</summary>
    public required OutlookSilence Silence { get; init; }

    /// <summary>A few words to be read from afar.</summary>
    public required string Mark { get; init; }

    /// <summary>What they mean, or why there is no outlook.</summary>
    public required string Meaning { get; init; }

    /// <summary>What it rests on.</summary>
    public required string Basis { get; init; }

    /// <summary>The rest in words, a sentence or two each.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>True when the margin covers the wanted one now; null where it is not known.</summary>
    public required bool? HoldsNow { get; init; }

    /// <summary>Blush margin now, with a piece as warm as the air.</summary>
    public required double? MarginC { get; init; }

    /// <summary>Margin that is wanted.</summary>
    public required double? WantedC { get; init; }

    /// <summary>Retarder level that it is for, %; null where the margin is not known.</summary>
    public required double? RetarderPct { get; init; }

    /// <summary>Time until the margin crosses the wanted one in one of ten such days: closes where it holds now, opens where it does not.</summary>
    public required double? EarlyH { get; init; }

    /// <summary>The same in half of them.</summary>
    public required double? MiddleH { get; init; }

    /// <summary>The same in nine of ten.</summary>
    public required double? LateH { get; init; }

    /// <summary>Time until the end that the word is about: of the day, or of what it can speak of.</summary>
    public required double? EndH { get; init; }

    /// <summary>Share of such days on which the margin holds to that end, or comes to hold by then; 0 to 1.</summary>
    public required double? ShareAtEnd { get; init; }

    /// <summary>The nearest time ahead that it speaks of.</summary>
    public required double? FromH { get; init; }

    /// <summary>The farthest.</summary>
    public required double? ToH { get; init; }

    /// <summary>Earlier days that it rests on; while there are too few, those on record.</summary>
    public required int Days { get; init; }

    /// <summary>Days needed.</summary>
    public required int DaysNeeded { get; init; }

    /// <summary>True where the earlier days are invented: the demo.</summary>
    public required bool IsInvented { get; init; }

    /// <summary>What it took to work out, ms.</summary>
    public required double TookMs { get; init; }

    /// <summary>How the booth follows its intake; null where that is not learned.</summary>
    public required RoomModel? Room { get; init; }

    /// <summary>A step of the air in the last hour.</summary>
    public required AirStep? Step { get; init; }

    /// <summary>The band of the margin over the time ahead.</summary>
    public required IReadOnlyList<OutlookAnswerBand> Band { get; init; }

    /// <summary>How it fares on this record, at each time ahead.</summary>
    public required IReadOnlyList<OutlookAnswerScore> Scores { get; init; }

    /// <summary>The answer for a state.</summary>
    /// <param name="state">The state.</param>
    /// <param name="words">How it is said.</param>
    /// <param name="text">The unit of the words.</param>
    public static OutlookAnswer Of(OutlookState state, OutlookWords words, DegreeText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(words);
        DayOutlook outlook = state.Outlook;
        bool speaks = outlook.Word != OutlookWord.Silent;
        bool marginKnown = outlook.WantedC > 0 && outlook.Silence is not (OutlookSilence.AirUnknown or OutlookSilence.MarginUnknown);
        return new OutlookAnswer
        {
            Time = state.At?.Utc,
            TimeOfDay = state.At?.TimeOfDay.ToString(@"hh\:mm", CultureInfo.InvariantCulture),
            Word = outlook.Word,
            Silence = outlook.Silence,
            Mark = words.Mark(state),
            Meaning = words.Meaning(state),
            Basis = words.Basis(state),
            Words = [.. words.Rest(state)],
            HoldsNow = marginKnown ? outlook.HoldsNow : null,
            MarginC = marginKnown ? Round(outlook.MarginC) : null,
            WantedC = marginKnown ? Round(outlook.WantedC) : null,
            RetarderPct = marginKnown ? state.RetarderPct : null,
            EarlyH = Hours(outlook.Early),
            MiddleH = Hours(outlook.Middle),
            LateH = Hours(outlook.Late),
            EndH = speaks ? Hours(outlook.End) : null,
            ShareAtEnd = speaks ? Round(outlook.ShareAtEnd) : null,
            FromH = speaks ? Hours(outlook.From) : null,
            ToH = speaks ? Hours(outlook.To) : null,
            Days = outlook.Days,
            DaysNeeded = OutlookQuestion.LeastDays,
            IsInvented = state.IsInvented,
            TookMs = Math.Round(state.TookMs, 1),
            Room = state.Room,
            Step = state.Step,
            Band = [.. outlook.Band.Select(point => OutlookAnswerBand.Of(point, words.TimeOfDay(state, point.Step)))],
            Scores = [.. outlook.Scores.Select(OutlookAnswerScore.Of)],
        };
    }

    private static double? Hours(TimeSpan? time) => time is { } t ? Round(t.TotalHours) : null;

    private static double Round(double value) => Math.Round(value, 2);
}
