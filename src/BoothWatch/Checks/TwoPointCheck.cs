namespace BoothWatch.Checks;

/// <summary>Two results over different salts as a straight line: by how much a sensor is shifted, and by how much its scale is stretched.</summary>
/// <remarks>
/// Deviation at humidity x: d1 + (d2 - d1)(x - r1)/(r2 - r1), with deviations d and references r of the two salts. It is told, never applied: a
/// sensor that fails its salt point is replaced, not corrected away.
/// </remarks>
/// <param name="OffsetPct">Deviation at <see cref="MiddlePct"/>, % of relative humidity.</param>
/// <param name="OffsetUncertaintyPct">Expanded uncertainty (k = 2) of it.</param>
/// <param name="StretchPct">How much too wide its scale is, % of any step of humidity: 2 where 50 % of step reads as 51.</param>
/// <param name="StretchUncertaintyPct">Expanded uncertainty (k = 2) of it.</param>
public sealed record TwoPointCheck(double OffsetPct, double OffsetUncertaintyPct, double StretchPct, double StretchUncertaintyPct)
{
    /// <summary>Where the offset is told, % of relative humidity.</summary>
    public const double MiddlePct = 50;

    /// <summary>Fixed points closer together than this say nothing of the scale, % of relative humidity.</summary>
    public const double LeastApartPct = 20;

    /// <summary>The line through two results; null where their salts are too close together.</summary>
    public static TwoPointCheck? Of(CheckResult first, CheckResult second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        double apart = second.ReferencePct - first.ReferencePct;
        if (Math.Abs(apart) < LeastApartPct)
        {
            return null;
        }

        double stretch = (second.DeviationPct - first.DeviationPct) / apart;
        double share = (MiddlePct - first.ReferencePct) / apart;
        double offset = first.DeviationPct + (stretch * (MiddlePct - first.ReferencePct));
        return new TwoPointCheck(
            offset,
            Root((1 - share) * first.ExpandedUncertaintyPct, share * second.ExpandedUncertaintyPct),
            100 * stretch,
            100 * Root(first.ExpandedUncertaintyPct, second.ExpandedUncertaintyPct) / Math.Abs(apart));
    }

    private static double Root(double first, double second) => Math.Sqrt((first * first) + (second * second));
}
