using BoothWatch.Checks;

namespace BoothWatch.Tests.Checks;

public class SensorDriftTests
{
    private static readonly DateTimeOffset Start = new(2026, 1, 10, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Of_TwoChecksAYearApart_IsTheirDifference_WithTheRootOfTheSquares()
    {
        SensorDrift drift = SensorDrift.Of([At(0, 0.5, 1.0), At(365.25, 1.7, 1.0)])!;
        Assert.Equal(1.2, drift.PctPerYear, 9);
        Assert.Equal(Math.Sqrt(2), drift.ExpandedUncertaintyPct, 9);
        Assert.False(drift.IsSignificant);
    }

    // Reckoned by hand with unequal weights: t = 0, 1, 2 years, d = 0, 1, 4, u = 0.5, 0.5, 1 (U = 1, 1, 2), w = 4, 4, 1: means 6/9 and 8/9;
    // slope = (4 x 0.5926 + 4 x 0.0370 + 4.1481)/(4 x 0.4444 + 4 x 0.1111 + 1.7778) = 6.6667/4 = 1.6667, u = 1/sqrt(4) = 0.5, U = 1.
    [Fact]
    public void Of_UnequalUncertainties_IsTheWeightedLine()
    {
        SensorDrift drift = SensorDrift.Of([At(0, 0, 1), At(365.25, 1, 1), At(730.5, 4, 2)])!;
        Assert.Equal(1.6667, drift.PctPerYear, 3);
        Assert.Equal(1, drift.ExpandedUncertaintyPct, 9);
        Assert.True(drift.IsSignificant);
    }

    [Fact]
    public void Of_OneCheck_OrTooCloseTogether_IsNotKnown()
    {
        Assert.Null(SensorDrift.Of([]));
        Assert.Null(SensorDrift.Of([At(0, 1, 1)]));
        Assert.Null(SensorDrift.Of([At(0, 1, 1), At(29, 2, 1)]));
    }

    [Fact]
    public void Of_DifferentSalts_MixesNothing()
    {
        Assert.Null(SensorDrift.Of([At(0, 1, 1), At(200, 4, 1, "magnesium-chloride")]));
        SensorDrift drift = SensorDrift.Of([At(0, 1, 1), At(100, 9, 1, "magnesium-chloride"), At(200, 9, 1, "magnesium-chloride"), At(365.25, 1, 1)])!;
        Assert.Equal(("sodium-chloride", 0.0), (drift.Salt, Math.Round(drift.PctPerYear, 9)));
    }

    [Fact]
    public void NextCheck_WithoutDrift_IsAfterTheInterval() =>
        Assert.Equal(new DateTimeOffset(2026, 7, 10, 12, 0, 0, TimeSpan.Zero), NextCheck.After(At(0, 1, 1), null, 6));

    // 1 % off of 3 %, 4 % a year: 2 % are left, half of it is used up in a quarter of a year.
    [Fact]
    public void NextCheck_WithAFastDrift_ComesSooner()
    {
        DateTimeOffset next = NextCheck.After(At(0, 1, 1), new SensorDrift("sodium-chloride", 4, 1), 6);
        Assert.Equal(91.3, (next - Start).TotalDays, 1);
        Assert.Equal(NextCheck.Soonest, NextCheck.After(At(0, 2.9, 1), new SensorDrift("sodium-chloride", 12, 1), 6) - Start);
    }

    // Off to one side, drifting to the other: 4 % are left.
    [Fact]
    public void NextCheck_DriftingBack_HasTheWholeToleranceToGo() =>
        Assert.Equal(182.6, (NextCheck.After(At(0, 1, 1), new SensorDrift("sodium-chloride", -4, 1), 24) - Start).TotalDays, 1);

    [Fact]
    public void NextCheck_WithADriftThatMayBeNone_IsAfterTheInterval() =>
        Assert.Equal(Start.AddMonths(6), NextCheck.After(At(0, 1, 1), new SensorDrift("sodium-chloride", 4, 5), 6));

    // A sensor that reads 1 % too damp at 33 and 3 % at 75: by hand 1 + 2 x 17/42 = 1.81 at 50, and 2/42 = 4.76 % of each step too large.
    [Fact]
    public void TwoPoint_OfTwoSalts_IsTheLineThroughThem()
    {
        TwoPointCheck both = TwoPointCheck.Of(new CheckResult("m", 25, 33, 34, 0.6, 4), new CheckResult("s", 25, 75, 78, 0.8, 4))!;
        Assert.Equal(1.81, both.OffsetPct, 2);
        Assert.Equal(4.76, both.StretchPct, 2);
        Assert.Equal(100 * 1.0 / 42, both.StretchUncertaintyPct, 6);
        Assert.Equal(Math.Sqrt(Math.Pow(0.6 * 25 / 42, 2) + Math.Pow(0.8 * 17 / 42, 2)), both.OffsetUncertaintyPct, 6);
        Assert.Equal(both, TwoPointCheck.Of(new CheckResult("s", 25, 75, 78, 0.8, 4), new CheckResult("m", 25, 33, 34, 0.6, 4))! with { OffsetPct = both.OffsetPct, OffsetUncertaintyPct = both.OffsetUncertaintyPct });
        Assert.Null(TwoPointCheck.Of(new CheckResult("s", 25, 75, 78, 0.8, 4), new CheckResult("p", 25, 84, 84, 0.8, 4)));
    }

    private static DatedResult At(double days, double deviationPct, double expandedPct, string salt = "sodium-chloride") =>
        new(Start.AddDays(days), new CheckResult(salt, 25, 75, 75 + deviationPct, expandedPct, 3));
}
