namespace BoothWatch.Verdicts;

/// <summary>How a verdict is written, everywhere: page, JSON, journal, log and command line.</summary>
public static class VerdictWords
{
    /// <summary>The word for a verdict: <c>spray</c>, <c>slow down</c> or <c>wait</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the three.</exception>
    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.Spray => "spray",
        Verdict.SlowDown => "slow down",
        Verdict.Wait => "wait",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "A verdict is spray, slow down or wait."),
    };
}
