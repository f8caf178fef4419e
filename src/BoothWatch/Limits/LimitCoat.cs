namespace BoothWatch.Limits;

/// <summary>One coat as evidence for the shop's own limit: how much margin it had by the model, and whether it blushed.</summary>
/// <param name="CoatId">Number of the coat.</param>
/// <param name="Day">The day in the shop on which it was begun.</param>
/// <param name="MarginC">Blush margin of the coat when it began, °C.</param>
/// <param name="UncertaintyC">Standard uncertainty (k = 1) of that margin, °C.</param>
/// <param name="Blushed">True when it blushed; false when it did not.</param>
public sealed record LimitCoat(long CoatId, DateOnly Day, double MarginC, double UncertaintyC, bool Blushed)
{
    /// <summary>True when the figures can be true: finite, and an uncertainty of 0 or more.</summary>
    public bool IsUsable => double.IsFinite(MarginC) && double.IsFinite(UncertaintyC) && UncertaintyC >= 0;

    /// <summary>The part of the uncertainty that comes anew with each coat: without the error of the model, which one shop's coats share, °C.</summary>
    /// <param name="modelUncertaintyC">Standard uncertainty of the model, °C.</param>
    public double OwnUncertaintyC(double modelUncertaintyC) =>
        Math.Sqrt(Math.Max(0, (UncertaintyC * UncertaintyC) - (modelUncertaintyC * modelUncertaintyC)));
}
