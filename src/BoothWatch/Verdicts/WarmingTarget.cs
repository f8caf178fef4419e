namespace BoothWatch.Verdicts;

/// <summary>Which rule of the piece asks for the most.</summary>
public enum WarmingTarget
{
    /// <summary>Clear of the dew point.</summary>
    DewPoint,

    /// <summary>Not much colder than the air.</summary>
    Air,
}
