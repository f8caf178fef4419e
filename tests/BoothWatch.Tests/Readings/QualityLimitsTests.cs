using BoothWatch.Readings;

namespace BoothWatch.Tests.Readings;

public class QualityLimitsTests
{
    public static TheoryData<Quantity> Quantities => [.. Enum.GetValues<Quantity>()];

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Of_EveryQuantity_HasLimitsAndAUnit(Quantity quantity)
    {
        QualityLimits limits = QualityLimits.Of(quantity);
        Assert.True(limits.Range.Lowest < limits.Range.Highest);
        Assert.Equal(TimeSpan.FromSeconds(5), limits.StaleAfter);
        Assert.NotNull(QuantityUnit.Of(quantity));
        Assert.Null(QualityLimits.OfTypedIn(quantity, TimeSpan.FromMinutes(30)).FrozenAfter);
        Assert.Equal(quantity is Quantity.ExhaustProof or Quantity.FilterPressureDrop, limits.FrozenAfter is null);
        Assert.Equal(quantity is Quantity.BoothHumidity or Quantity.IntakeHumidity, limits.SaturatedFromPct is not null);
    }

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Contains_EndsAndBeyond_IncludesTheEndsOnly(Quantity quantity)
    {
        PlausibleRange range = PlausibleRange.Of(quantity);
        Assert.True(range.Contains(range.Lowest));
        Assert.True(range.Contains(range.Highest));
        Assert.False(range.Contains(Math.BitDecrement(range.Lowest)));
        Assert.False(range.Contains(Math.BitIncrement(range.Highest)));
        Assert.False(range.Contains(double.NaN));
    }

    [Fact]
    public void Of_UnknownQuantity_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PlausibleRange.Of((Quantity)99));
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityUnit.Of((Quantity)99));
    }
}
