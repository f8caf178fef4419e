using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>The words for verdicts in the journal's JSON.</summary>
internal static class VerdictNames
{
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Spray => "spray",
        Verdict.SlowDown => "slow down",
        _ => "wait",
    };
}
