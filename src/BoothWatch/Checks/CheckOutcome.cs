namespace BoothWatch.Checks;

/// <summary>What a check says of a sensor.</summary>
public enum CheckOutcome
{
    /// <summary>Surely within its tolerance.</summary>
    Within,

    /// <summary>The tolerance lies within the uncertainty of the check: it may be either.</summary>
    CannotTell,

    /// <summary>Surely out of its tolerance.</summary>
    Outside,
}
