namespace BoothWatch.Outlook;

/// <summary>The day in one word. Never a verdict.</summary>
public enum OutlookWord
{
    /// <summary>Nothing is said, which never means that it is a spray day.</summary>
    Silent,

    /// <summary>The margin holds to the end of the day, or as far as the outlook speaks, in nine of ten such days or more.</summary>
    SprayDay,

    /// <summary>It holds now, and to the end in more than half of such days.</summary>
    MayClose,

    /// <summary>It holds now and closes before the end in half of such days or more.</summary>
    Closes,

    /// <summary>It does not hold now, and comes to hold before the end in half of such days or more.</summary>
    Opens,

    /// <summary>It does not hold now, and comes to hold in fewer than half of such days.</summary>
    MayOpen,

    /// <summary>It does not hold now, and comes to hold in one of ten such days at most.</summary>
    NoSprayDay,
}
