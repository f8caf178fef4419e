namespace BoothWatch.Verdicts;

/// <summary>What the time until a piece is warm rests on.</summary>
public enum WarmingBasis
{
    /// <summary>The trail of its own last minutes.</summary>
    Measured,

    /// <summary>The model of a body of its thickness and material.</summary>
    Model,
}
