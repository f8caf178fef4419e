namespace BoothWatch.Jobs;

/// <summary>How a coat came out, as the finisher sees it.</summary>
public enum CoatOutcome
{
    /// <summary>Clear and sound.</summary>
    Clear,

    /// <summary>White or hazy from water that was still in the film when it set.</summary>
    Blushed,

    /// <summary>Runs or sags.</summary>
    Runs,

    /// <summary>Rough from overspray that landed dry.</summary>
    DrySpray,

    /// <summary>Did not flow out.</summary>
    OrangePeel,

    /// <summary>Still soft long after it should have been hard.</summary>
    Soft,
}
