namespace BoothWatch.Verdicts.Rules;

/// <summary>Cold lacquer is thick and dries slowly, so it runs and stays soft: slow down, then wait. Common practice, no source.</summary>
public sealed class AirTooCold : IRule
{
    /// <inheritdoc />
    public string Name => "too-cold";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Air is not { } air)
        {
            yield break;
        }

        VerdictPolicy policy = evidence.Policy;
        TemperatureText text = evidence.Text;
        if (air.TemperatureC < policy.WaitBelowTemperatureC)
        {
            yield return new Reason(
                Name,
                Verdict.Wait,
                $"air {text.Of(air.TemperatureC)}, under {text.Of(policy.WaitBelowTemperatureC)}",
                "wait, and warm the shop before spraying, with no flame or open heater near vapour",
                RuleOrder.TooCold);
        }
        else if (air.TemperatureC < policy.SlowDownBelowTemperatureC)
        {
            yield return new Reason(
                Name,
                Verdict.SlowDown,
                $"air {text.Of(air.TemperatureC)}, under {text.Of(policy.SlowDownBelowTemperatureC)}",
                "lay thin coats and leave longer between them",
                RuleOrder.TooCold);
        }
    }
}
