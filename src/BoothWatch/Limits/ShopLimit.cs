using System.Collections.Immutable;

namespace BoothWatch.Limits;

/// <summary>The required margin by a shop's own coats: what it is, how sure that is, and what speaks for it.</summary>
public sealed record ShopLimit
{
    /// <summary>The limit is written in steps of this, rounded up, °C.</summary>
    public const double StepC = 0.1;

    /// <summary>The required margin, °C.</summary>
    public required double RequiredMarginC { get; init; }

    /// <summary>The margin below which a coat of this shop is more likely to blush than not, as far as the verdict heeds it, °C: 0, by the
    /// model, or more where the limit is raised.</summary>
    public required double BlushesBelowC { get; init; }

    /// <summary>What the evidence does to the margin of the settings.</summary>
    public required LimitChange Change { get; init; }

    /// <summary>The threshold: the margin by the model below which a coat of this shop blushes.</summary>
    public required CredibleBand Threshold { get; init; }

    /// <summary>The required margin that the coats speak for.</summary>
    public required CredibleBand NeededMargin { get; init; }

    /// <summary>Coats that count.</summary>
    public required int Coats { get; init; }

    /// <summary>Of them, blushed.</summary>
    public required int Blushed { get; init; }

    /// <summary>What must be there before it may move.</summary>
    public required ImmutableArray<LimitGate> Gates { get; init; }

    /// <summary>Finds the limit.</summary>
    /// <param name="coats">The coats that count: their air and outcome are known.</param>
    /// <param name="coatsInAll">All coats of the same time whose air is known, marked or not.</param>
    /// <param name="rules">The rules.</param>
    /// <exception cref="ArgumentException">A figure of a coat is not usable.</exception>
    public static ShopLimit Of(IReadOnlyCollection<LimitCoat> coats, int coatsInAll, LimitRules rules)
    {
        ArgumentNullException.ThrowIfNull(coats);
        ArgumentNullException.ThrowIfNull(rules);
        ThresholdPosterior posterior = new(coats, rules);
        ImmutableArray<LimitGate> gates = [.. LimitGates.Of(coats, coatsInAll, rules)];
        double required = Required(posterior, gates, rules);
        LimitChange change = required > rules.ConfiguredMarginC ? LimitChange.Raised
            : required < rules.ConfiguredMarginC ? LimitChange.Lowered
            : LimitChange.None;
        CredibleBand threshold = posterior.Threshold;
        return new ShopLimit
        {
            RequiredMarginC = required,
            BlushesBelowC = change == LimitChange.Raised ? Math.Clamp(threshold.LikelyC, 0, required) : 0,
            Change = change,
            Threshold = threshold,
            NeededMargin = posterior.NeededMargin,
            Coats = coats.Count,
            Blushed = coats.Count(coat => coat.Blushed),
            Gates = gates,
        };
    }

    // The setting holds while it lies between what is enough with 75 % and with 95 %: it rises to the first and falls to the second.
    private static double Required(ThresholdPosterior posterior, IReadOnlyList<LimitGate> gates, LimitRules rules)
    {
        bool Open(LimitChange direction) => gates.All(gate => gate.Direction != direction || gate.IsOpen);
        double limit = rules.ConfiguredMarginC;
        if (Open(LimitChange.Lowered))
        {
            limit = Math.Min(limit, Math.Max(rules.FloorC, RoundedUp(posterior.NeededMarginC(rules.SureToLower))));
        }

        if (Open(LimitChange.Raised))
        {
            limit = Math.Max(limit, Math.Min(rules.CeilingC, RoundedUp(posterior.NeededMarginC(rules.SureToRaise))));
        }

        return limit;
    }

    private static double RoundedUp(double marginC) => Math.Round(Math.Ceiling((marginC / StepC) - 1e-9) * StepC, 6);
}
