using System.Globalization;
using BoothWatch.Checks;

namespace BoothWatch.Service.Checks;

/// <summary>Says in words what a check found.</summary>
internal static class CheckWords
{
    /// <summary>What was found, for example <c>+1.6 % ± 1.1 % (k = 2) over sodium chloride, within the tolerance of ± 3.6 %</c>.</summary>
    public static string Finding(CheckResult result) => string.Create(
        CultureInfo.InvariantCulture,
        $"{Signed(result.DeviationPct)} ± {result.ExpandedUncertaintyPct:0.0} % (k = 2) over {SaltName(result.Salt)}, {Outcome(result.Outcome)} of ± {result.TolerancePct:0.0} %");

    /// <summary>What was found at one time, over one salt or more.</summary>
    public static string Finding(IEnumerable<DatedResult> results) => string.Join("; ", results.Select(dated => Finding(dated.Result)));

    /// <summary>The last result over each salt, of the last check and what belongs to it.</summary>
    public static IReadOnlyList<DatedResult> Latest(IReadOnlyList<DatedResult> results) => results.Count == 0
        ? []
        : [.. results.Where(dated => results[^1].At - dated.At < OneCheck).GroupBy(dated => dated.Result.Salt).Select(salt => salt.Last()).OrderBy(dated => dated.At)];

    /// <summary>How the reading has drifted.</summary>
    public static string Of(SensorDrift drift) => string.Create(
        CultureInfo.InvariantCulture,
        $"drift over {SaltName(drift.Salt)}: {Signed(drift.PctPerYear)} ± {drift.ExpandedUncertaintyPct:0.0} % a year{(drift.IsSignificant ? "" : ", which may be none")}");

    /// <summary>What two salts say together.</summary>
    public static string Of(TwoPointCheck both) => string.Create(
        CultureInfo.InvariantCulture,
        $"both salts together: {Signed(both.OffsetPct)} ± {both.OffsetUncertaintyPct:0.0} % at {TwoPointCheck.MiddlePct:0} % and steps of humidity come out {Math.Abs(both.StretchPct):0.0} ± {both.StretchUncertaintyPct:0.0} % too {(both.StretchPct < 0 ? "small" : "large")}. This is told, never applied");

    /// <summary>The two results of a check that lie farthest apart, as one line; null when there is but one.</summary>
    public static TwoPointCheck? Both(IReadOnlyList<DatedResult> latest)
    {
        DatedResult[] byHumidity = [.. latest.OrderBy(dated => dated.Result.ReferencePct)];
        return byHumidity.Length < 2 ? null : TwoPointCheck.Of(byHumidity[0].Result, byHumidity[^1].Result);
    }

    /// <summary>Name of a salt by its id.</summary>
    public static string SaltName(string id) => SaltPoint.Find(id)?.Name ?? id;

    /// <summary>The decision, to be followed by the tolerance.</summary>
    public static string Outcome(CheckOutcome outcome) => outcome switch
    {
        CheckOutcome.Within => "within the tolerance",
        CheckOutcome.Outside => "out of the tolerance",
        _ => "too close to tell to the tolerance",
    };

    // Two jars, each overnight, with a weekend between.
    private static readonly TimeSpan OneCheck = TimeSpan.FromDays(7);

    private static string Signed(double pct) => string.Create(CultureInfo.InvariantCulture, $"{(pct < 0 ? "−" : "+")}{Math.Abs(pct):0.0} %");
}
