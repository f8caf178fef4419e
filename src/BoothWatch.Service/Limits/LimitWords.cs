using System.Globalization;
using BoothWatch.Limits;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Limits;

/// <summary>Says in words what the shop's own limit is, how sure that is and what it rests on.</summary>
/// <param name="text">The unit of the temperatures.</param>
internal sealed class LimitWords(DegreeText text)
{
    /// <summary>The first words.</summary>
    public string Headline(LimitState state, LimitRules rules, bool enabled, double inForceC)
    {
        string setting = By(rules.ConfiguredMarginC);
        return (state, enabled) switch
        {
            ({ Trouble: not null }, _) => $"Not known now; the required margin is {By(inForceC)}.",
            ({ Limit: null }, _) => "Not known yet.",
            ({ WaitsForCoat: true }, true) => $"Required margin {By(inForceC)} until this coat is done, then {By(state.Limit.RequiredMarginC)}.",
            ({ Limit.Change: LimitChange.None }, true) => $"Required margin {setting}, as in the settings.",
            ({ Limit: var limit }, true) => $"Required margin {By(limit.RequiredMarginC)}, {Moved(limit)} from {setting} by this shop's own coats.",
            ({ Limit.Change: LimitChange.None }, false) => $"Switched off. If it were on, the required margin would stay at {setting}.",
            ({ Limit: var limit }, false) => $"Switched off. If it were on, the required margin would be {By(limit.RequiredMarginC)} instead of {setting}.",
        };
    }

    /// <summary>The rest.</summary>
    public IEnumerable<string> Rest(LimitState state, LimitRules rules, bool enabled)
    {
        if (state is not { Limit: { } limit, Evidence: { } evidence })
        {
            yield return state.Trouble ?? "BoothWatch is still reading the journal.";
            yield break;
        }

        yield return $"In this shop a coat blushes below a margin of about {Signed(limit.Threshold.LikelyC)} by the model, with 90 % probability between "
            + $"{Signed(limit.Threshold.LowC)} and {Signed(limit.Threshold.HighC)}. By the model alone it is 0.";
        yield return Evidence(limit, evidence);
        yield return Why(limit, rules);
        if (limit.Change == LimitChange.Raised && limit.BlushesBelowC > 0)
        {
            yield return $"Below a margin of {By(limit.BlushesBelowC)} the verdict {(enabled ? "is" : "would be")} wait: there a coat of this shop is more likely to blush than not.";
        }

        yield return $"The verdict adds the uncertainty of each margin to the required one as before. The limit stays between {By(rules.FloorC)} and {By(rules.CeilingC)}.";
        if (!enabled)
        {
            yield return "To switch it on, set limit:enabled to true in the configuration and restart the service.";
        }
    }

    private static string Evidence(ShopLimit limit, LimitEvidence evidence)
    {
        if (limit.Coats == 0)
        {
            return evidence.NotMarked == 0
                ? "No coat counts yet: mark coats on the jobs page, and say of each how it came out."
                : $"No coat counts yet: {Coats(evidence.NotMarked)} still {(evidence.NotMarked == 1 ? "waits" : "wait")} for a word on the outcome.";
        }

        string held = limit.Blushed == limit.Coats ? "all of them blushed" : limit.Blushed == 0 ? "none of them blushed" : $"{limit.Blushed} of them blushed";
        List<string> left = [];
        if (evidence.NotMarked > 0)
        {
            left.Add($"{evidence.NotMarked} that nobody judged");
        }

        if (evidence.DrySpray > 0)
        {
            left.Add($"{evidence.DrySpray} of dry spray");
        }

        if (evidence.AirNotKnown > 0)
        {
            left.Add($"{evidence.AirNotKnown} whose air is not known");
        }

        string without = left.Count > 0 ? $" Left out: {string.Join(", ", left)}." : "";
        string mark = evidence.NotMarked > limit.Coats ? " Mark the coats that held as well, else the limit only ever rises." : "";
        return $"It rests on {Coats(limit.Coats)} since {evidence.From:yyyy-MM-dd}; {held}.{without}{mark}";
    }

    private string Why(ShopLimit limit, LimitRules rules)
    {
        string needed = $"What the coats speak for is a required margin of {Signed(limit.NeededMargin.LikelyC)}, with 90 % probability between {Signed(limit.NeededMargin.LowC)} and {Signed(limit.NeededMargin.HighC)}";
        if (limit.Change != LimitChange.None)
        {
            return needed + (limit.Change == LimitChange.Raised
                ? "; it rises to what is enough with 75 % probability."
                : "; it falls only to what is enough with 95 % probability.");
        }

        LimitChange wanted = limit.NeededMargin.LikelyC < rules.ConfiguredMarginC ? LimitChange.Lowered : LimitChange.Raised;
        string[] missing = [.. limit.Gates.Where(gate => gate.Direction == wanted && !gate.IsOpen).Select(Missing)];
        string direction = wanted == LimitChange.Lowered ? "fall" : "rise";
        return missing.Length > 0
            ? $"{needed}; to {direction} it needs more evidence: {string.Join("; ", missing)}."
            : $"{needed}; that is not sure enough to move the setting.";
    }

    private static string Missing(LimitGate gate) =>
        string.Create(CultureInfo.InvariantCulture, $"{gate.What}: {gate.Have:0.#} of {gate.Need:0.#}");

    private static string Moved(ShopLimit limit) => limit.Change == LimitChange.Raised ? "raised" : "lowered";

    private static string Coats(int count) => count == 1 ? "1 coat" : $"{count} coats";

    private string By(double differenceC) => text.Difference(differenceC).TrimStart('+');

    private string Signed(double differenceC) => text.Difference(differenceC);
}
