using BoothWatch.Limits;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Limits;

/// <summary>What holds for any coats.</summary>
public class ShopLimitProperties
{
    private const double Rounding = 1e-9;
    private static readonly LimitRules Rules = new() { LeastCoats = 4, LeastCloseDays = 2 };

    private static Gen<LimitCoat> AnyCoat() =>
        from n in Gen.Choose(1, 30)
        from margin in Gen.Choose(-400, 800)
        from uncertainty in Gen.Choose(50, 200)
        from blushed in Gen.Choose(0, 3)
        select new LimitCoat(n, new DateOnly(2026, 6, 3).AddDays(n / 2), margin / 100.0, uncertainty / 100.0, blushed == 0);

    private static Arbitrary<(LimitCoat[] Coats, LimitCoat Next)> Shops() =>
        (from coats in AnyCoat().ArrayOf() from next in AnyCoat() select (coats, next)).ToArbitrary();

    [Property(MaxTest = 150)]
    public Property Limit_WithOneMoreCoat_MovesOnlyItsWay() => Prop.ForAll(Shops(), shop =>
    {
        ShopLimit before = ShopLimit.Of(shop.Coats, shop.Coats.Length + 1, Rules);
        ShopLimit after = ShopLimit.Of([.. shop.Coats, shop.Next], shop.Coats.Length + 1, Rules);
        double way = shop.Next.Blushed ? 1 : -1;
        return (after.RequiredMarginC - before.RequiredMarginC) * way >= -Rounding
            && (after.BlushesBelowC - before.BlushesBelowC) * way >= -Rounding
            && (after.Threshold.LowC - before.Threshold.LowC) * way >= -Rounding
            && (after.NeededMargin.HighC - before.NeededMargin.HighC) * way >= -Rounding;
    });

    [Property(MaxTest = 150)]
    public Property Limit_OfAnyCoats_StaysBetweenFloorAndCeilingAndItsGates() => Prop.ForAll(Shops(), shop =>
    {
        ShopLimit limit = ShopLimit.Of(shop.Coats, shop.Coats.Length, Rules);
        int held = shop.Coats.Count(coat => !coat.Blushed);
        int surprises = shop.Coats.Count(coat => coat.Blushed && coat.MarginC >= 0);
        return limit.RequiredMarginC >= Rules.FloorC
            && limit.RequiredMarginC <= Rules.CeilingC
            && (limit.Change != LimitChange.Lowered || held >= Rules.LeastCoats)
            && (limit.Change != LimitChange.Raised || surprises >= Rules.LeastBlushed)
            && limit.BlushesBelowC >= 0
            && limit.BlushesBelowC <= limit.RequiredMarginC;
    });
}
