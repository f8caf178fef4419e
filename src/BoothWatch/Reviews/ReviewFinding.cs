namespace BoothWatch.Reviews;

/// <summary>What the model says of a coat in the air that was recorded.</summary>
public enum ReviewFinding
{
    /// <summary>Not known: something was not recorded.</summary>
    NotKnown,

    /// <summary>It blushes.</summary>
    Blushes,

    /// <summary>It is nearer to its limit than the uncertainty of the margin: it may blush.</summary>
    MayBlush,

    /// <summary>It holds, beyond the uncertainty: the air explains no blush.</summary>
    Holds,
}
