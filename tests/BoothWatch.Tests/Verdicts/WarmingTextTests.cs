using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts;

public class WarmingTextTests
{
    [Theory]
    [InlineData(10, "under 1 min")]
    [InlineData(60, "1 min")]
    [InlineData(530, "9 min")]
    [InlineData(2340, "40 min")]
    [InlineData(4100, "1 h 10 min")]
    [InlineData(7200, "2 h")]
    public void RoughTime_IsAsCoarseAsItDeserves(double seconds, string text) => Assert.Equal(text, RoughTime.Of(seconds));

    [Theory]
    [InlineData(2400, 1800, 3600.0, "about 40 min (30 min to 1 h)")]
    [InlineData(2400, 1800, 3000.0, "about 40 min (30 to 50 min)")]
    [InlineData(2400, 1800, null, "about 40 min (30 min or more)")]
    [InlineData(2400, 2390, 2410.0, "about 40 min")]
    [InlineData(20, 5, 100.0, "under 1 min (under 1 min to 2 min)")]
    public void Time_HasItsRange(double leftS, double leastS, double? mostS, string text) =>
        Assert.Equal(text, WarmingText.Time(Sample(WarmingState.Warming) with { LeftS = leftS, LeastS = leastS, MostS = mostS }));

    [Theory]
    [InlineData(WarmingState.AirTooCold, "wait, and warm the piece to 17.0 °C or more, which this air is not warm enough for")]
    [InlineData(WarmingState.NotWarming, "wait, and warm the piece to 17.0 °C or more, it is not warming now")]
    [InlineData(WarmingState.Unknown, "wait, and warm the piece to 17.0 °C or more")]
    public void Reason_WithoutATime_SaysWhy(WarmingState state, string action)
    {
        Evidence evidence = GoodBooth.Evidence(air: GoodBooth.Air(dewPointC: 12.8, pieceC: 14)) with { Warming = Sample(state) };
        Assert.Equal(action, new PieceNearDewPoint().Judge(evidence).Single().Action);
    }

    [Fact]
    public void Reason_OfAPieceMuchColderThanTheAir_SaysTheTimeToo()
    {
        Evidence evidence = GoodBooth.Evidence(air: GoodBooth.Air(pieceC: 15)) with
        {
            Warming = Sample(WarmingState.Warming) with { LeftS = 1500, LeastS = 1200, MostS = 1800 },
        };
        Assert.Equal("let it warm in the booth to 17.0 °C first, in this air about 25 min (20 to 30 min)", new PieceAgainstAir().Judge(evidence).Single().Action);
    }

    private static PieceWarming Sample(WarmingState state) => new() { State = state, TargetC = 17, TargetFrom = WarmingTarget.Air, ClearanceC = 1 };
}
