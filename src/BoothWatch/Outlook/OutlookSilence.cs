namespace BoothWatch.Outlook;

/// <summary>Why the outlook says nothing.</summary>
public enum OutlookSilence
{
    /// <summary>It speaks.</summary>
    None,

    /// <summary>The air of the booth is not known now.</summary>
    AirUnknown,

    /// <summary>The film model has no answer for the coat in this air.</summary>
    MarginUnknown,

    /// <summary>Too few earlier days were recorded at this time of day.</summary>
    TooFewDays,

    /// <summary>On this shop's record it does no better than "as it is now".</summary>
    NoBetter,

    /// <summary>The working day is over, or nearly.</summary>
    DayOver,

    /// <summary>The record cannot be read.</summary>
    NoRecord,

    /// <summary>Nothing was worked out yet since the start.</summary>
    NotYet,

    /// <summary>It is switched off in the settings.</summary>
    SwitchedOff,

    /// <summary>The verdict waits for another reason than the margin, one that earlier days say nothing of.</summary>
    VerdictWaits,

    /// <summary>A fault of our own.</summary>
    Failed,
}
