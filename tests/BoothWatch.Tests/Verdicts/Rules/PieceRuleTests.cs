using BoothWatch.Readings;
using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts.Rules;

public class PieceRuleTests
{
    /// <summary>ISO 8502-4:2017: the surface shall be at least 3 °C above the dew point.</summary>
    [Theory]
    [InlineData(20.0, 10.0, Verdict.Spray)]
    [InlineData(13.5, 10.5, Verdict.Spray)]
    [InlineData(13.4, 10.5, Verdict.Wait)]
    [InlineData(10.5, 10.5, Verdict.Wait)]
    [InlineData(8.0, 10.5, Verdict.Wait)]
    [InlineData(double.NaN, 10.5, Verdict.Wait)]
    public void PieceNearDewPoint_AtEachEdge_Limits(double pieceC, double dewPointC, Verdict expected)
    {
        Evidence evidence = GoodBooth.Evidence(air: GoodBooth.Air(dewPointC: dewPointC, pieceC: pieceC));
        Assert.Equal(expected, new PieceNearDewPoint().Judge(evidence).SingleOrDefault()?.Limit ?? Verdict.Spray);
    }

    [Fact]
    public void PieceNearDewPoint_PieceNotMeasured_TakesTheAirInstead()
    {
        Evidence evidence = GoodBooth.Evidence(air: GoodBooth.Air(20, 95, 19.2, pieceC: null));
        Assert.Equal(
            "air 20.0 °C, 0.8 °C over the dew point: wait for drier air",
            RuleCheck.Of(new PieceNearDewPoint(), evidence)?.ToString());
    }

    [Fact]
    public void PieceNearDewPoint_Reason_SaysHowWarmIsEnough()
    {
        Assert.Equal(
            "piece 14.0 °C, 1.2 °C over the dew point: wait, and warm the piece to 17.0 °C or more",
            RuleCheck.Of(new PieceNearDewPoint(), GoodBooth.Evidence(air: GoodBooth.Air(dewPointC: 12.8, pieceC: 14)))?.ToString());
        Assert.Equal(
            "piece 10.0 °C, 2.8 °C under the dew point: wait, and warm the piece to 17.0 °C or more",
            RuleCheck.Of(new PieceNearDewPoint(), GoodBooth.Evidence(air: GoodBooth.Air(dewPointC: 12.8, pieceC: 10)))?.ToString());
    }

    [Fact]
    public void PieceNearDewPoint_AlreadyAsWarmAsWouldBeNamed_DoesNotAskToWarmIt() => Assert.Equal(
        "piece 15.8 °C, 3.0 °C over the dew point: wait for drier air",
        RuleCheck.Of(new PieceNearDewPoint(), GoodBooth.Evidence(air: GoodBooth.Air(20, dewPointC: 12.8, pieceC: 15.76)))?.ToString());

    /// <summary>Dew point 12.8 °C and 3 °C; or air less 5 °C; the higher of the two, rounded up to a tenth.</summary>
    [Theory]
    [InlineData(22.0, 12.8)]
    [InlineData(18.0, 12.8)]
    [InlineData(22.03, 9.31)]
    [InlineData(18.0, 12.87)]
    public void Piece_WarmedToTheTemperatureNamed_PassesBothRules(double airC, double dewPointC)
    {
        double pieceC = dewPointC - 1;
        Evidence cold = GoodBooth.Evidence(air: GoodBooth.Air(airC, dewPointC: dewPointC, pieceC: pieceC));
        string action = RuleCheck.Of(new PieceNearDewPoint(), cold)!.Action;
        double namedC = double.Parse(action.Split(' ').First(word => word.Contains('.', StringComparison.Ordinal)), System.Globalization.CultureInfo.InvariantCulture);
        Evidence At(double c) => GoodBooth.Evidence(air: GoodBooth.Air(airC, dewPointC: dewPointC, pieceC: c));
        bool Passes(double c) => RuleCheck.Of(new PieceNearDewPoint(), At(c)) is null && RuleCheck.Of(new PieceAgainstAir(), At(c)) is null;
        Assert.True(Passes(namedC + 1e-9));
        Assert.False(Passes(namedC - 0.1001));
    }

    [Theory]
    [InlineData(22.0, 17.0, null)]
    [InlineData(22.0, 16.9, "piece 16.9 °C, 5.1 °C colder than the air: let it warm in the booth to 17.0 °C first")]
    [InlineData(22.0, 32.0, null)]
    [InlineData(22.0, 32.1, "piece 32.1 °C, 10.1 °C warmer than the air: let it cool in the booth first")]
    public void PieceAgainstAir_AtEachEdge_SlowsDown(double airC, double pieceC, string? expected)
    {
        Reason? reason = RuleCheck.Of(new PieceAgainstAir(), GoodBooth.Evidence(air: GoodBooth.Air(airC, pieceC: pieceC)));
        Assert.Equal(expected, reason?.ToString());
        Assert.True(reason is null or { Limit: Verdict.SlowDown });
    }

    [Fact]
    public void PieceKnown_Missing_WaitsOnlyWhereRequired()
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot().Without(Quantity.PieceTemperature);
        Assert.Equal(Verdict.Wait, RuleCheck.Limit(new PieceKnown(), GoodBooth.Evidence(snapshot)));
        Assert.Equal(
            Verdict.Spray,
            RuleCheck.Limit(new PieceKnown(), GoodBooth.Evidence(snapshot, policy: new VerdictPolicy { RequirePieceTemperature = false })));
    }

    [Theory]
    [InlineData(ReadingQuality.NoReading)]
    [InlineData(ReadingQuality.Stale)]
    [InlineData(ReadingQuality.Frozen)]
    [InlineData(ReadingQuality.OutOfRange)]
    [InlineData(ReadingQuality.Disagreeing)]
    public void PieceKnown_SensorFails_WaitsEvenWhereNotRequired(ReadingQuality quality)
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot(GoodBooth.Bad(Quantity.PieceTemperature, quality));
        Assert.Equal(
            Verdict.Wait,
            RuleCheck.Limit(new PieceKnown(), GoodBooth.Evidence(snapshot, policy: new VerdictPolicy { RequirePieceTemperature = false })));
    }

    [Fact]
    public void PieceKnown_Reason_CarriesTheCauseOfTheReading() => Assert.Equal(
        "no piece temperature (last answer 42 s ago): wait, and check sensor piece and its wiring",
        RuleCheck.Of(
            new PieceKnown(),
            GoodBooth.Evidence(GoodBooth.Snapshot(GoodBooth.Bad(Quantity.PieceTemperature, ReadingQuality.Stale, "last answer 42 s ago"))))?.ToString());
}
