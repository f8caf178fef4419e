namespace BoothWatch.Limits;

/// <summary>Counts what must be there before the limit may move.</summary>
/// <remarks>
/// What guards a fall counts coats that did not blush only, and what guards a rise coats that did: so no gate is ever opened by a coat
/// that speaks against what it guards.
/// </remarks>
internal static class LimitGates
{
    public static IEnumerable<LimitGate> Of(IReadOnlyCollection<LimitCoat> coats, int coatsInAll, LimitRules rules)
    {
        LimitCoat[] held = [.. coats.Where(coat => !coat.Blushed)];
        int closeDays = held.Where(coat => coat.MarginC < rules.WantedMarginC(coat.UncertaintyC)).Select(coat => coat.Day).Distinct().Count();
        double judgedPct = 100.0 * held.Length / Math.Max(1, Math.Max(coatsInAll, coats.Count));
        yield return new(LimitChange.Lowered, "coats marked as not blushed", held.Length, rules.LeastCoats);
        yield return new(LimitChange.Lowered, "days with such a coat that had less margin than the settings want", closeDays, rules.LeastCloseDays);
        yield return new(LimitChange.Lowered, "% of all coats marked as not blushed", Math.Floor(judgedPct), rules.LeastJudgedPct);
        yield return new(
            LimitChange.Raised,
            "coats that blushed though the model said they would hold",
            coats.Count(coat => coat.Blushed && coat.MarginC >= 0),
            rules.LeastBlushed);
    }
}
