namespace BoothWatch.Verdicts.Rules;

/// <summary>A film that does not set within the longest run of the model stays open to dust, runs and water: wait.</summary>
public sealed class FilmSets : IRule
{
    /// <inheritdoc />
    public string Name => "film-does-not-set";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Film is { } film && film.TimeToSetS is not (> 0 and < double.PositiveInfinity))
        {
            yield return new Reason(
                Name,
                Verdict.Wait,
                "this coat does not set within the longest run of the film model",
                "wait, use less retarder or a thinner coat, or warm the piece",
                RuleOrder.FilmDoesNotSet);
        }
    }
}
