namespace BoothWatch.Film;

/// <summary>What sets a critical humidity.</summary>
public enum CriticalLimit
{
    /// <summary>The film blushes above it.</summary>
    Blush,

    /// <summary>The bare piece draws dew above it.</summary>
    Dew,

    /// <summary>Air cannot be damper: saturated air does not blush this coat.</summary>
    Saturation,
}
