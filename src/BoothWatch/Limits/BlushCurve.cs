using System.Collections.Immutable;

namespace BoothWatch.Limits;

/// <summary>The chance of blushing over the range of margins that the coats had.</summary>
public static class BlushCurve
{
    private const int Points = 45;

    /// <summary>What is always shown, and what never, °C.</summary>
    private static readonly (double LowC, double HighC) Always = (-1.5, 3.5);
    private static readonly (double LowC, double HighC) Most = (-4, 8);

    /// <summary>What the sensors bring to the uncertainty of a margin where no coat says, °C. Assumed, as of the usual parts.</summary>
    private const double UsualOwnUncertaintyC = 0.6;

    /// <summary>The chance of blushing, least margin first.</summary>
    /// <param name="coats">The coats that count.</param>
    /// <param name="rules">The rules.</param>
    /// <exception cref="ArgumentException">A figure of a coat is not usable.</exception>
    public static ImmutableArray<BlushCurvePoint> Of(IReadOnlyCollection<LimitCoat> coats, LimitRules rules)
    {
        ArgumentNullException.ThrowIfNull(coats);
        ArgumentNullException.ThrowIfNull(rules);
        ThresholdPosterior posterior = new(coats, rules);
        double[] own = [.. coats.Select(coat => coat.OwnUncertaintyC(rules.ModelUncertaintyC)).Order()];
        double usual = own.Length > 0 ? own[own.Length / 2] : UsualOwnUncertaintyC;
        double low = Math.Max(Most.LowC, Math.Min(Always.LowC, coats.Select(coat => coat.MarginC - 0.5).DefaultIfEmpty(0).Min()));
        double high = Math.Min(Most.HighC, Math.Max(Always.HighC, coats.Select(coat => coat.MarginC + 0.5).DefaultIfEmpty(0).Max()));
        return [.. Enumerable.Range(0, Points).Select(i => posterior.ChanceAt(low + ((high - low) * i / (Points - 1)), usual))];
    }
}
