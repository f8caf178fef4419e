namespace BoothWatch.Alerts;

/// <summary>What happened to an episode.</summary>
public enum EpisodeStep
{
    /// <summary>It began. Nothing is told yet.</summary>
    Began,

    /// <summary>It is to be told now.</summary>
    Told,

    /// <summary>One of a higher level takes its place; no all-clear.</summary>
    Replaced,

    /// <summary>It is over: the all-clear, when it was told.</summary>
    Cleared,

    /// <summary>It is over without an all-clear, because what it was about is no more.</summary>
    Lapsed,
}
