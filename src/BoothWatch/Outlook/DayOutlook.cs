namespace BoothWatch.Outlook;

/// <summary>Is today a spray day, and for how long? From this shop's own days. An outlook is no verdict, and says nothing of the air as something to breathe.</summary>
public sealed record DayOutlook
{
    /// <summary>An outlook that says nothing.</summary>
    /// <param name="silence">Why.</param>
    public static DayOutlook SilentFor(OutlookSilence silence) => new() { Silence = silence };

    /// <summary>Why nothing is said; none when it speaks.</summary>
    public OutlookSilence Silence { get; init; }

    /// <summary>The day in one word.</summary>
    public OutlookWord Word { get; init; }

    /// <summary>Earlier days that it rests on; while it is silent for too few, those on record.</summary>
    public int Days { get; init; }

    /// <summary>True when the margin covers the wanted one now.</summary>
    public bool HoldsNow { get; init; }

    /// <summary>Blush margin now, with a piece as warm as the air, °C.</summary>
    public double MarginC { get; init; }

    /// <summary>Margin that is wanted, °C.</summary>
    public double WantedC { get; init; }

    /// <summary>The nearest time ahead it speaks of.</summary>
    public TimeSpan From { get; init; }

    /// <summary>The farthest time ahead it speaks of.</summary>
    public TimeSpan To { get; init; }

    /// <summary>Time until the working day ends.</summary>
    public TimeSpan DayEnds { get; init; }

    /// <summary>True when it speaks of all the rest of the working day.</summary>
    public bool CoversTheDay => To >= DayEnds;

    /// <summary>How far the word goes: to the end of the day, or to where it falls silent.</summary>
    public TimeSpan End => CoversTheDay ? DayEnds : To;

    /// <summary>
    /// Time by which the margin has crossed the wanted one in one path of ten; null: not within <see cref="To"/>. At <see cref="From"/> it may
    /// have been any time before.
    /// </summary>
    public TimeSpan? Early { get; init; }

    /// <summary>The same in half of the paths.</summary>
    public TimeSpan? Middle { get; init; }

    /// <summary>The same in nine of ten.</summary>
    public TimeSpan? Late { get; init; }

    /// <summary>Share of the paths that hold until <see cref="End"/> where the margin holds now; that come to hold by then where it does not. 0 to 1.</summary>
    public double ShareAtEnd { get; init; }

    /// <summary>The band at every step that it speaks of.</summary>
    public IReadOnlyList<OutlookBandPoint> Band { get; init; } = [];

    /// <summary>How it fares on this shop's record at each horizon, nearest first.</summary>
    public IReadOnlyList<HorizonScore> Scores { get; init; } = [];
}
