using System.Globalization;

namespace BoothWatch.Verdicts.Rules;

/// <summary>Dry air holds static charge, which draws dust, and thinner flashes before the overspray lands wet: slow down.</summary>
public sealed class AirTooDry : IRule
{
    /// <inheritdoc />
    public string Name => "too-dry";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        double limitPct = evidence.Policy.SlowDownBelowHumidityPct;
        if (evidence.Air is { } air && air.RelativeHumidityPct < limitPct)
        {
            yield return new Reason(
                Name,
                Verdict.SlowDown,
                string.Create(CultureInfo.InvariantCulture, $"humidity {air.RelativeHumidityPct:0.0} %, under {limitPct:0.#} %, so static and dry spray"),
                "ground the piece and the gun, wipe off dust, lay the coat wet",
                RuleOrder.TooDry);
        }
    }
}
