namespace BoothWatch.Alerts;

/// <summary>What a sign does to an episode.</summary>
public enum SignState
{
    /// <summary>Begins one, and keeps it going.</summary>
    On,

    /// <summary>Keeps one going, and begins none: between the limits, or not known.</summary>
    Holding,

    /// <summary>Ends one, once it has lasted.</summary>
    Off,
}
