namespace BoothWatch.Service.Checks;

/// <summary>What an entry of the journal says happened in a check. Part of the file format: the words stay.</summary>
internal enum CheckStep
{
    /// <summary>A check was begun: from here on the sensor is held.</summary>
    Begun,

    /// <summary>The sensor is in the closed jar over a salt.</summary>
    InJar,

    /// <summary>A result was taken.</summary>
    Result,

    /// <summary>Somebody said that the sensor is back in its place.</summary>
    Back,

    /// <summary>The reading has settled there: the sensor is used again.</summary>
    Ended,

    /// <summary>The part was replaced: a fresh history begins.</summary>
    Replaced,
}
