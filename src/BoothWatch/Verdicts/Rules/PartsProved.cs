namespace BoothWatch.Verdicts.Rules;

/// <summary>While parts are proved one at a time, emulated readings are mixed in with real ones, and no verdict from them holds: wait.</summary>
public sealed class PartsProved : IRule
{
    /// <inheritdoc />
    public string Name => "parts-not-proved";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Snapshot.IsProving)
        {
            yield return new Reason(
                Name,
                Verdict.Wait,
                "emulated readings are mixed in while parts are proved",
                "wait, and set sensors:proving to false when the proving is done",
                RuleOrder.PartsProved);
        }
    }
}
