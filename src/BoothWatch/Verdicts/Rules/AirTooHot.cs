namespace BoothWatch.Verdicts.Rules;

/// <summary>Hot air skins the film while solvent is still below, and spray lands dry: slow down, then wait. Common practice, no source.</summary>
public sealed class AirTooHot : IRule
{
    /// <inheritdoc />
    public string Name => "too-hot";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Air is not { } air)
        {
            yield break;
        }

        VerdictPolicy policy = evidence.Policy;
        TemperatureText text = evidence.Text;
        if (air.TemperatureC > policy.WaitAboveTemperatureC)
        {
            yield return new Reason(
                Name,
                Verdict.Wait,
                $"air {text.Of(air.TemperatureC)}, over {text.Of(policy.WaitAboveTemperatureC)}",
                "wait for a cooler hour",
                RuleOrder.TooHot);
        }
        else if (air.TemperatureC > policy.SlowDownAboveTemperatureC)
        {
            yield return new Reason(
                Name,
                Verdict.SlowDown,
                $"air {text.Of(air.TemperatureC)}, over {text.Of(policy.SlowDownAboveTemperatureC)}",
                "lay thin wet coats and leave longer between them",
                RuleOrder.TooHot);
        }
    }
}
