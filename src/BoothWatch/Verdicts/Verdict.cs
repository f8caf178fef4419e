namespace BoothWatch.Verdicts;

/// <summary>The answer to "may I spray this coat now?". Wait is the default value: not knowing is never spray.</summary>
public enum Verdict
{
    /// <summary>Do not spray.</summary>
    Wait = 0,

    /// <summary>Spraying is possible with the change or care that the reasons name.</summary>
    SlowDown = 1,

    /// <summary>The air, the piece and the mix hold this coat.</summary>
    Spray = 2,
}
