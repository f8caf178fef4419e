namespace BoothWatch.Jobs;

/// <summary>How a soft film fares.</summary>
public enum WatchState
{
    /// <summary>Not known: a value is missing. Somebody has to look.</summary>
    Unknown,

    /// <summary>The piece is at or below the dew point: dew on a soft film.</summary>
    Wet,

    /// <summary>The piece is near the dew point.</summary>
    Close,

    /// <summary>The piece is well above the dew point.</summary>
    Safe,
}
