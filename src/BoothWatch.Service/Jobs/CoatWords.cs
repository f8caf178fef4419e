using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>How kinds and outcomes are written in JSON and addresses: kebab-case words.</summary>
public static class CoatWords
{
    /// <summary>The kinds, by word.</summary>
    public static IReadOnlyDictionary<string, CoatKind> Kinds { get; } = Enum.GetValues<CoatKind>().ToDictionary(Word, StringComparer.OrdinalIgnoreCase);

    /// <summary>The outcomes, by word.</summary>
    public static IReadOnlyDictionary<string, CoatOutcome> Outcomes { get; } = new Dictionary<string, CoatOutcome>(StringComparer.OrdinalIgnoreCase)
    {
        ["clear"] = CoatOutcome.Clear,
        ["blushed"] = CoatOutcome.Blushed,
        ["runs"] = CoatOutcome.Runs,
        ["dry-spray"] = CoatOutcome.DrySpray,
        ["orange-peel"] = CoatOutcome.OrangePeel,
        ["soft"] = CoatOutcome.Soft,
    };

    /// <summary>The word for a kind: <c>flash</c>, <c>clear</c>, <c>colour</c>, <c>sealer</c>.</summary>
    public static string Word(this CoatKind kind) => kind.ToString().ToLowerInvariant();

    /// <summary>The word for an outcome: <c>clear</c>, <c>blushed</c>, <c>runs</c>, <c>dry-spray</c>, <c>orange-peel</c>, <c>soft</c>.</summary>
    public static string Word(this CoatOutcome outcome) => Outcomes.First(pair => pair.Value == outcome).Key;

    /// <summary>The kind for a word.</summary>
    public static bool TryKind(string word, out CoatKind kind) => Kinds.TryGetValue(word, out kind);
}
