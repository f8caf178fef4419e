namespace BoothWatch.Jobs;

/// <summary>What a timer runs for.</summary>
public enum JobTimerKind
{
    /// <summary>The next coat of the same round.</summary>
    NextCoat,

    /// <summary>The next round, with sanding before it.</summary>
    NextRound,

    /// <summary>The film of the last coat is hard enough; the watch ends.</summary>
    Hard,

    /// <summary>The piece may be buffed.</summary>
    Buff,
}
