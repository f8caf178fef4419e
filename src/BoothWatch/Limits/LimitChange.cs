namespace BoothWatch.Limits;

/// <summary>What the evidence does to the required margin of the settings.</summary>
public enum LimitChange
{
    /// <summary>Nothing: it stays as configured.</summary>
    None,

    /// <summary>It rises.</summary>
    Raised,

    /// <summary>It falls.</summary>
    Lowered,
}
