namespace BoothWatch.Verdicts;

/// <summary>How a piece stands that must be warm before it is sprayed. Not known is the default value.</summary>
public enum WarmingState
{
    /// <summary>Too cold, and nobody can say for how long.</summary>
    Unknown = 0,

    /// <summary>Too cold, and on its way.</summary>
    Warming,

    /// <summary>Too cold, and by its own trail not getting warmer, though the air is.</summary>
    NotWarming,

    /// <summary>Too cold, and waiting does not help: the air is no warmer than the piece must be.</summary>
    AirTooCold,

    /// <summary>As warm as its rules ask.</summary>
    Warm,
}
