using BoothWatch.Readings;

namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// Spraying without exhaust is never advised. A proof that says "no air moves", or that cannot be trusted, means wait.
/// A booth without any proof waits too, unless the policy lets it go as far as slow down.
/// </summary>
public sealed class ExhaustProven : IRule
{
    /// <inheritdoc />
    public string Name => "exhaust-not-proven";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        Reading proof = evidence[Quantity.ExhaustProof];
        if (proof is { IsGood: true, Value: 1.0 })
        {
            yield break;
        }

        if (proof.IsGood)
        {
            yield return new Reason(
                Name, Verdict.Wait, "the exhaust moves no air", "switch the fan on and wait until it is proven", RuleOrder.Exhaust);
        }
        else if (evidence.HasNoSensor(Quantity.ExhaustProof) && !evidence.Policy.RequireExhaustProof)
        {
            yield return new Reason(
                Name,
                Verdict.SlowDown,
                "nothing proves that the exhaust runs",
                "see and feel that the fan draws before and while you spray",
                RuleOrder.Exhaust);
        }
        else
        {
            yield return new Reason(
                Name, Verdict.Wait, $"exhaust not proven ({SensorAdvice.Cause(proof, evidence.Text)})", SensorAdvice.Action(proof), RuleOrder.Exhaust);
        }
    }
}
