using BoothWatch.Readings;
using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts.Rules;

/// <summary>Booth sensors, clock, exhaust, filter and barometer.</summary>
public class BoothRuleTests
{
    public static TheoryData<ReadingQuality> EveryBadQuality =>
        [.. Enum.GetValues<ReadingQuality>().Where(quality => quality != ReadingQuality.Good)];

    [Theory]
    [MemberData(nameof(EveryBadQuality))]
    public void BoothAirKnown_AnyBadQuality_WaitsWithTheCause(ReadingQuality quality)
    {
        foreach (Quantity quantity in new[] { Quantity.BoothTemperature, Quantity.BoothHumidity })
        {
            Reason? reason = RuleCheck.Of(
                new BoothAirKnown(), GoodBooth.Evidence(GoodBooth.Snapshot(GoodBooth.Bad(quantity, quality, "the very cause"))));
            Assert.Equal(Verdict.Wait, reason?.Limit);
            Assert.Contains("the very cause", reason?.Finding, StringComparison.Ordinal);
            Assert.Contains("wait", reason?.Action, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(EveryBadQuality))]
    public void BoothAirKnown_NoCauseGiven_StillSaysWhy(ReadingQuality quality)
    {
        Reason? reason = RuleCheck.Of(
            new BoothAirKnown(), GoodBooth.Evidence(GoodBooth.Snapshot(GoodBooth.Bad(Quantity.BoothHumidity, quality, null))));
        Assert.Matches(@"^no booth humidity \(.{10,}\)$", reason?.Finding);
    }

    [Theory]
    [InlineData(Quantity.BoothTemperature, double.NaN)]
    [InlineData(Quantity.BoothTemperature, double.PositiveInfinity)]
    [InlineData(Quantity.BoothTemperature, -41)]
    [InlineData(Quantity.BoothTemperature, 61)]
    [InlineData(Quantity.BoothHumidity, double.NaN)]
    [InlineData(Quantity.BoothHumidity, 0)]
    [InlineData(Quantity.BoothHumidity, 100.1)]
    public void BoothAirKnown_ValueThatCannotBeTrue_WaitsThoughMarkedGood(Quantity quantity, double value) => Assert.Equal(
        Verdict.Wait,
        new BoothAirKnown().Judge(GoodBooth.Evidence(GoodBooth.Snapshot(GoodBooth.Good(quantity, value)))).Single().Limit);

    [Fact]
    public void BoothAirKnown_OnePartGivesNeither_SaysItOnce()
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot(
            GoodBooth.Bad(Quantity.BoothTemperature, ReadingQuality.NoReading, "no acknowledge at 0x44"),
            GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.NoReading, "no acknowledge at 0x44"));
        Assert.Equal(
            "no booth temperature and humidity (no acknowledge at 0x44): wait, and check sensor boothAir and its wiring",
            RuleCheck.Of(new BoothAirKnown(), GoodBooth.Evidence(snapshot))?.ToString());
    }

    [Fact]
    public void BoothAirKnown_DifferentCauses_SaysBoth()
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot(
            GoodBooth.Bad(Quantity.BoothTemperature, ReadingQuality.Stale, "last answer 30 s ago"),
            GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.Saturated, "100 % for 5 min"));
        Assert.Equal(2, new BoothAirKnown().Judge(GoodBooth.Evidence(snapshot)).Count());
    }

    [Fact]
    public void BoothAirKnown_GoodReadingsButNoAir_Waits()
    {
        Evidence noAir = GoodBooth.Evidence() with { Air = null };
        Assert.Equal(Verdict.Wait, RuleCheck.Limit(new BoothAirKnown(), noAir));
        Assert.Equal(Verdict.Wait, RuleCheck.Limit(new BoothAirKnown(), GoodBooth.Evidence(air: GoodBooth.Air(dewPointC: double.NaN))));
        Assert.Null(RuleCheck.Of(new BoothAirKnown(), GoodBooth.Evidence()));
    }

    [Fact]
    public void ClockProven_Unproven_Waits()
    {
        Assert.Null(RuleCheck.Of(new ClockProven(), GoodBooth.Evidence()));
        Assert.Equal(
            Verdict.Wait, RuleCheck.Limit(new ClockProven(), GoodBooth.Evidence(GoodBooth.Snapshot() with { ClockProven = false })));
    }

    [Theory]
    [InlineData(1.0, Verdict.Spray)]
    [InlineData(0.0, Verdict.Wait)]
    [InlineData(0.99, Verdict.Wait)]
    [InlineData(1.01, Verdict.Wait)]
    [InlineData(double.NaN, Verdict.Wait)]
    public void ExhaustProven_EachLevel_Limits(double proof, Verdict expected)
    {
        Evidence evidence = GoodBooth.Evidence(GoodBooth.Snapshot(GoodBooth.Good(Quantity.ExhaustProof, proof)));
        Assert.Equal(expected, new ExhaustProven().Judge(evidence).SingleOrDefault()?.Limit ?? Verdict.Spray);
        // A proof that says no is no matter of policy.
        Evidence lenient = evidence with { Policy = new VerdictPolicy { RequireExhaustProof = false } };
        Assert.Equal(expected, new ExhaustProven().Judge(lenient).SingleOrDefault()?.Limit ?? Verdict.Spray);
    }

    [Fact]
    public void ExhaustProven_ThatHasNotAnsweredYet_WaitsForItsFirstAnswer_WithoutAnAlarm()
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot(
            new Reading(Quantity.ExhaustProof, "sail", null, 0, TimeSpan.Zero, ReadingQuality.Missing, "it has not answered yet"));
        Assert.Equal("exhaust not proven (it has not answered yet): wait for its first answer", RuleCheck.Of(new ExhaustProven(), GoodBooth.Evidence(snapshot))?.ToString());
    }

    [Fact]
    public void ExhaustProven_NoSensor_WaitsOrAtMostSlowsDown()
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot().Without(Quantity.ExhaustProof);
        VerdictPolicy lenient = new() { RequireExhaustProof = false };
        Assert.Equal(Verdict.Wait, RuleCheck.Limit(new ExhaustProven(), GoodBooth.Evidence(snapshot)));
        Assert.Equal(Verdict.SlowDown, RuleCheck.Limit(new ExhaustProven(), GoodBooth.Evidence(snapshot, policy: lenient)));
    }

    [Theory]
    [InlineData(ReadingQuality.NoReading)]
    [InlineData(ReadingQuality.Stale)]
    public void ExhaustProven_SensorFails_WaitsEvenWhereNotRequired(ReadingQuality quality)
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot(GoodBooth.Bad(Quantity.ExhaustProof, quality));
        VerdictPolicy lenient = new() { RequireExhaustProof = false };
        Assert.Equal(Verdict.Wait, RuleCheck.Limit(new ExhaustProven(), GoodBooth.Evidence(snapshot, policy: lenient)));
    }

    [Theory]
    [InlineData(40, null)]
    [InlineData(125, null)]
    [InlineData(125.6, "filter pressure drop 126 Pa, over 125 Pa: change the exhaust filter")]
    [InlineData(2.0, null)]
    [InlineData(1.9, "filter pressure drop 1.9 Pa with the fan running, under 2 Pa: check that the filter is in and the hoses are on")]
    public void FilterLoaded_AtEachEdge_SlowsDown(double dropPa, string? expected)
    {
        Reason? reason = RuleCheck.Of(
            new FilterLoaded(), GoodBooth.Evidence(GoodBooth.Snapshot(GoodBooth.Good(Quantity.FilterPressureDrop, dropPa))));
        Assert.Equal(expected, reason?.ToString());
        Assert.True(reason is null or { Limit: Verdict.SlowDown });
    }

    [Fact]
    public void FilterLoaded_FanOff_HasNoWordForALowDrop()
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot(
            GoodBooth.Good(Quantity.FilterPressureDrop, 0), GoodBooth.Good(Quantity.ExhaustProof, 0));
        Assert.Null(RuleCheck.Of(new FilterLoaded(), GoodBooth.Evidence(snapshot)));
    }

    [Fact]
    public void FilterLoaded_NoGauge_IsContent_FailedGauge_SlowsDown()
    {
        Assert.Null(RuleCheck.Of(new FilterLoaded(), GoodBooth.Evidence(GoodBooth.Snapshot().Without(Quantity.FilterPressureDrop))));
        foreach (ReadingQuality quality in new[] { ReadingQuality.Missing, ReadingQuality.NoReading, ReadingQuality.Stale })
        {
            Evidence failed = GoodBooth.Evidence(GoodBooth.Snapshot(GoodBooth.Bad(Quantity.FilterPressureDrop, quality)));
            Assert.Equal(Verdict.SlowDown, RuleCheck.Limit(new FilterLoaded(), failed));
        }
    }

    [Fact]
    public void PressureKnown_NoBarometer_Remarks_FailedBarometer_SlowsDown()
    {
        Assert.Null(RuleCheck.Of(new PressureKnown(), GoodBooth.Evidence()));
        Assert.Equal(
            Verdict.Spray,
            RuleCheck.Of(new PressureKnown(), GoodBooth.Evidence(GoodBooth.Snapshot().Without(Quantity.StationPressure)))?.Limit);
        foreach (ReadingQuality quality in new[] { ReadingQuality.Missing, ReadingQuality.NoReading, ReadingQuality.OutOfRange })
        {
            Evidence failed = GoodBooth.Evidence(GoodBooth.Snapshot(GoodBooth.Bad(Quantity.StationPressure, quality)));
            Assert.Equal(Verdict.SlowDown, RuleCheck.Of(new PressureKnown(), failed)?.Limit);
        }
    }
}
