namespace BoothWatch.Verdicts.Rules;

/// <summary>The film skins while much solvent is left below (too hot or too heavy): slow down.</summary>
public sealed class SolventTrapping : IRule
{
    /// <inheritdoc />
    public string Name => "solvent-trapping";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Film is { SolventTrappingRisk: true })
        {
            yield return new Reason(
                Name,
                Verdict.SlowDown,
                "this coat skins over while much solvent is left in it",
                "lay thinner coats and leave longer between them",
                RuleOrder.SolventTrapping);
        }
    }
}
