namespace BoothWatch.Service.Checks;

/// <summary>How far a running check is.</summary>
internal enum CheckStage
{
    /// <summary>Begun: the sensor is held and may be put into a jar.</summary>
    Begun,

    /// <summary>In a closed jar.</summary>
    InJar,

    /// <summary>Said to be back in its place; its reading has not settled there.</summary>
    Returning,
}
