namespace BoothWatch.Verdicts;

/// <summary>The one spelling of each verdict, for every output.</summary>
public static class VerdictWords
{
    /// <summary><c>spray</c>, <c>slow down</c> or <c>wait</c>; anything else is wait.</summary>
    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.Spray => "spray",
        Verdict.SlowDown => "slow down",
        _ => "wait",
    };
}
