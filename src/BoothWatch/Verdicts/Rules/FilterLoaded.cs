using System.Globalization;
using BoothWatch.Readings;

namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// A loaded exhaust filter slows the draw; hardly any drop while the fan runs means that a filter is missing or a hose is off.
/// The gauge is optional: none configured says nothing, one that fails asks for care.
/// </summary>
public sealed class FilterLoaded : IRule
{
    /// <inheritdoc />
    public string Name => "filter-loaded";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        Reading drop = evidence[Quantity.FilterPressureDrop];
        if (evidence.HasNoSensor(Quantity.FilterPressureDrop))
        {
            yield break;
        }

        VerdictPolicy policy = evidence.Policy;
        if (drop is not { IsGood: true, Value: double dropPa })
        {
            yield return SlowDown(
                $"filter pressure drop unknown ({SensorAdvice.Cause(drop, evidence.Text)})", "look at the filter and at the gauge before you spray");
        }
        else if (dropPa > policy.SlowDownAboveFilterDropPa)
        {
            yield return SlowDown(
                string.Create(CultureInfo.InvariantCulture, $"filter pressure drop {dropPa:0} Pa, over {policy.SlowDownAboveFilterDropPa:0} Pa"),
                "change the exhaust filter");
        }
        else if (dropPa < policy.SlowDownBelowFilterDropPa && evidence.Trusted(Quantity.ExhaustProof) is 1.0)
        {
            yield return SlowDown(
                string.Create(CultureInfo.InvariantCulture, $"filter pressure drop {dropPa:0.0} Pa with the fan running, under {policy.SlowDownBelowFilterDropPa:0.#} Pa"),
                "check that the filter is in and the hoses are on");
        }
    }

    private Reason SlowDown(string finding, string action) => new(Name, Verdict.SlowDown, finding, action, RuleOrder.Filter);
}
