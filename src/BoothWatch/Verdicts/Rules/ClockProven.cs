namespace BoothWatch.Verdicts.Rules;

/// <summary>An unproven clock puts the wrong time on the record of the coat: wait until it is set.</summary>
public sealed class ClockProven : IRule
{
    /// <inheritdoc />
    public string Name => "clock-unproven";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (!evidence.Snapshot.ClockProven)
        {
            yield return new Reason(
                Name, Verdict.Wait, "the clock is not set", "wait for time sync, or set the clock", RuleOrder.Clock);
        }
    }
}
