using BoothWatch.Alerts;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Alerts;

public class PieceWarmTests
{
    private readonly AlertBooth _booth = new();

    public PieceWarmTests() => _booth.Limits = _booth.Limits with { TellPieceWarm = true };

    private static PieceWarming Warm(double? sinceS) =>
        new() { State = WarmingState.Warm, TargetC = 15.94, TargetFrom = WarmingTarget.Air, ClearanceC = 6.6, WarmSinceS = sinceS };

    [Fact]
    public void Piece_ThatHasWarmed_IsToldOnceAndEndsByItself()
    {
        _booth.Warming = Warm(null) with { State = WarmingState.Warming, LeftS = 60 };
        Assert.Empty(_booth.Run(60));
        IReadOnlyList<EpisodeChange> changes = _booth.Run(1000, second => _booth.Warming = Warm(second));
        Episode told = Assert.Single(changes, change => change.Step == EpisodeStep.Told).Episode;
        Assert.Equal((AlertKind.PieceWarm, AlertLevel.Notice), (told.Kind, told.Level));
        Assert.Equal("the piece has the 16.0 °C that it must have, 6.6 °C over the dew point", told.Finding);
        Assert.Equal((1, 0, 1), (_booth.Told(AlertKind.PieceWarm), _booth.Cleared(AlertKind.PieceWarm), _booth.Lapsed(AlertKind.PieceWarm)));
    }

    [Fact]
    public void Piece_WarmForAMomentOnly_IsNotTold()
    {
        _booth.Run(20, second => _booth.Warming = Warm(second));
        _booth.Warming = Warm(null) with { State = WarmingState.Warming, LeftS = 30 };
        _booth.Run(60);
        Assert.Equal(0, _booth.Told(AlertKind.PieceWarm));
    }

    [Theory]
    [InlineData(true, null)]
    [InlineData(false, 60.0)]
    public void Piece_ThatWasNeverCold_OrThatNobodyAskedFor_IsNotTold(bool asked, double? sinceS)
    {
        _booth.Limits = _booth.Limits with { TellPieceWarm = asked };
        _booth.Warming = Warm(sinceS);
        _booth.Run(120);
        Assert.Equal(0, _booth.Told(AlertKind.PieceWarm));
    }
}
