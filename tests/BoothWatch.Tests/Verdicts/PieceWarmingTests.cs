using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Verdicts;
using BoothWatch.Warming;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Verdicts;

public class PieceWarmingTests
{
    private static readonly VerdictPolicy Policy = new();
    private static readonly Assessor Assessor = new(Policy, FakeFilm.Ask, altitudeM: 0);
    private static readonly CoatPlan ThickBody = FakeFilm.Plan(loadedPct: 5) with { PieceThicknessM = 0.045 };

    // 22 °C and 50 %: dew point 11.1 °C, so clear of it from 14.1 °C on, and no more than 5 °C colder than the air from 17 °C on.
    // 22 °C and 80 %: dew point 18.4 °C, so from 21.4 °C on.
    [Theory]
    [InlineData(50, 10, 17.0, WarmingTarget.Air, -1.1)]
    [InlineData(80, 10, 21.4, WarmingTarget.DewPoint, -8.4)]
    public void Target_IsWhatTheRulesOfThePieceAskFor(double humidityPct, double pieceC, double targetC, WarmingTarget from, double clearanceC)
    {
        PieceWarming warming = Assess(humidityPct, pieceC, ThickBody).Warming!;
        Assert.Equal(targetC, warming.TargetC, 0.05);
        Assert.Equal(from, warming.TargetFrom);
        Assert.Equal(clearanceC, warming.ClearanceC, 0.05);
    }

    [Fact]
    public void Warming_WithoutATrail_RestsOnTheModelAndIsSaidByTheReason()
    {
        Assessment assessment = Assess(50, 10, ThickBody);
        PieceWarming warming = assessment.Warming!;
        Assert.Equal((WarmingState.Warming, WarmingBasis.Model), (warming.State, warming.Basis!.Value));
        WarmingTime model = SlabWarming.Until(ThickBody.Body, BoothWatch.Air.MoistAir.FromRelativeHumidity(22, 50, 101_325), 0.5, 10, 0.3, 17)!.Value;
        Assert.Equal(model.LeftS, warming.LeftS!.Value, 1.0);
        Assert.True(warming.LeastS < warming.LeftS && warming.LeftS < warming.MostS);
        Assert.InRange(warming.CoreColderC!.Value, 1, 6);
        Reason reason = assessment.Reasons.Single(r => r.Rule == "piece-near-dew-point");
        Assert.Equal($"wait, and warm the piece to 17.0 °C or more, in this air {WarmingText.Time(warming)}", reason.Action);
    }

    [Fact]
    public void Warming_OfAThinPanel_TakesMinutes() =>
        Assert.InRange(Assess(50, 10, FakeFilm.Plan(loadedPct: 5)).Warming!.LeftS!.Value / 60, 0.5, 5);

    [Fact]
    public void Warming_OnceTheTrailIsLongEnough_RestsOnIt()
    {
        WarmingTrail trail = Trail(600, t => 22 - (12 * Math.Exp(-t / 1500)));
        PieceWarming warming = Assess(50, 22 - (12 * Math.Exp(-600.0 / 1500)), ThickBody, trail).Warming!;
        Assert.Equal((WarmingState.Warming, WarmingBasis.Measured), (warming.State, warming.Basis!.Value));
        Assert.Equal((1500 * Math.Log(12.0 / 5)) - 600, warming.LeftS!.Value, 20.0);
    }

    [Fact]
    public void Warming_OfAPieceThatStaysCold_HasNoTime()
    {
        WarmingTrail trail = Trail(900, t => 10 + (0.05 * (t % 2)));
        PieceWarming warming = Assess(50, 10, ThickBody, trail).Warming!;
        Assert.Equal(WarmingState.NotWarming, warming.State);
        Assert.Null(warming.LeftS);
        Assert.Null(warming.Basis);
    }

    // 200 mm of steel: 15 °C below the air it gains half a degree in twenty minutes, and needs most of a day.
    [Fact]
    public void Warming_OfAHeavyBody_TakesHoursAndIsNotStill()
    {
        CoatPlan plan = FakeFilm.Plan(loadedPct: 5);
        CoatPlan steel = plan with { PieceThicknessM = 0.2, Substrate = plan.Substrate with { ConductivityWPerMK = 50, VolumetricHeatCapacityJPerM3K = 3.7e6 } };
        double constantS = BodyGuess.Of(steel.Body, BoothWatch.Air.MoistAir.FromRelativeHumidity(22, 50, 101_325), steel.AirSpeedMPerS).ConstantS;
        WarmingTrail trail = Trail(1200, t => 22 - (15 * Math.Exp(-t / constantS)));
        PieceWarming warming = Assess(50, 22 - (15 * Math.Exp(-1200 / constantS)), steel, trail).Warming!;
        Assert.Equal(WarmingState.Warming, warming.State);
        double truthS = (constantS * Math.Log(15.0 / 5)) - 1200;
        Assert.True(truthS >= warming.LeastS && truthS <= (warming.MostS ?? double.PositiveInfinity), $"{truthS}: {warming}");
    }

    [Fact]
    public void Warming_InAirNoWarmerThanTheTarget_HasNoTime()
    {
        // 22 °C and 90 %: dew point 20.3 °C, so the piece would need 23.3 °C.
        Assessment assessment = Assess(90, 15, ThickBody);
        Assert.Equal(WarmingState.AirTooCold, assessment.Warming!.State);
        Assert.Null(assessment.Warming.LeftS);
    }

    [Fact]
    public void Warming_WhileAHandIsBeforeTheSensor_IsNotKnown()
    {
        WarmingTrail trail = Trail(600, t => t < 595 ? 10 : 30);
        PieceWarming warming = Assess(50, 30, ThickBody, trail).Warming!;
        Assert.Equal(WarmingState.Unknown, warming.State);
        Assert.Null(warming.LeftS);
    }

    [Fact]
    public void Warm_AfterItWasCold_SaysSinceWhen()
    {
        WarmingTrail trail = Trail(600, t => t <= 480 ? 16.9 : 17.1);
        PieceWarming warming = Assess(50, 17.1, ThickBody, trail).Warming!;
        Assert.Equal(WarmingState.Warm, warming.State);
        Assert.Equal(120, warming.WarmSinceS!.Value, 1.0);
        Assert.Null(Assess(50, 21, ThickBody, Trail(600, _ => 21)).Warming!.WarmSinceS);
    }

    [Fact]
    public void Warming_OfATypedValue_CountsFromWhenItWasTyped()
    {
        PieceWarming fresh = Assess(50, 10, ThickBody).Warming!;
        Reading typed = GoodBooth.Good(Quantity.PieceTemperature, 10, 0.3) with { Age = TimeSpan.FromMinutes(10) };
        PieceWarming old = Assessor.Assess(GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothHumidity, 50, 0.5), typed), ThickBody).Warming!;
        Assert.Equal(fresh.LeftS!.Value - 599, old.LeftS!.Value, 1.0);
    }

    [Fact]
    public void Warming_OfATypedValueThatIsOlderThanTheTimeItTakes_IsNowAndNotWarm()
    {
        Reading typed = GoodBooth.Good(Quantity.PieceTemperature, 10, 0.3) with { Age = TimeSpan.FromMinutes(30) };
        Assessment assessment = Assessor.Assess(GoodBooth.Snapshot(typed), FakeFilm.Plan());
        PieceWarming old = assessment.Warming!;
        Assert.Equal((WarmingState.Warming, 0.0), (old.State, old.LeftS!.Value));
        Assert.All(assessment.Reasons.Where(r => r.Rule is "piece-near-dew-point" or "piece-against-air"), r => Assert.EndsWith(", which by the model it may have by now: measure it again", r.Action, StringComparison.Ordinal));
        Assert.Equal(Verdict.Wait, assessment.Verdict);
    }

    [Fact]
    public void Nothing_Known_IsNeitherATimeNorWarm()
    {
        Assert.Null(Assessor.Assess(GoodBooth.Snapshot().Without(Quantity.PieceTemperature), ThickBody).Warming);
        Assert.Null(Assessor.Assess(GoodBooth.Snapshot().Without(Quantity.BoothTemperature), ThickBody).Warming);
        Assert.Null(Assessor.Assess(GoodBooth.Snapshot(GoodBooth.Bad(Quantity.PieceTemperature, ReadingQuality.Stale)), ThickBody).Warming);
        PieceWarming noPlan = Assessor.Assess(GoodBooth.Snapshot(GoodBooth.Good(Quantity.PieceTemperature, 5)), null).Warming!;
        Assert.Equal(WarmingState.Unknown, noPlan.State);
        Assert.Null(noPlan.LeftS);
    }

    /// <summary>Whatever is measured: warm exactly when both rules of the piece are content, a time exactly while warming, and the range in order.</summary>
    [Property(MaxTest = 300)]
    public bool AnyBooth_WarmMeansThatTheRulesAreContent(byte temperature, byte humidity, byte piece)
    {
        double temperatureC = 8 + (temperature / 255.0 * 27);
        double pieceC = temperatureC - 15 + (piece / 255.0 * 17);
        Assessment assessment = Assessor.Assess(
            GoodBooth.Snapshot(
                GoodBooth.Good(Quantity.BoothTemperature, temperatureC),
                GoodBooth.Good(Quantity.BoothHumidity, 20 + (humidity / 255.0 * 75), 0.5),
                GoodBooth.Good(Quantity.PieceTemperature, pieceC)),
            ThickBody);
        PieceWarming warming = assessment.Warming!;
        bool rulesAreContent = pieceC - assessment.Air!.DewPointC >= Policy.DewClearanceC && temperatureC - pieceC <= Policy.SlowDownPieceColderC;
        bool isOrdered = warming is { LeftS: null, LeastS: null, MostS: null, Basis: null }
            || (warming.LeastS >= 0 && warming.LeastS <= warming.LeftS && (warming.MostS is not { } most || most >= warming.LeftS));
        return (warming.State == WarmingState.Warm) == rulesAreContent && (warming.LeftS is not null) == (warming.State == WarmingState.Warming) && isOrdered;
    }

    /// <summary>A colder piece is never ready sooner; a piece in air that is warmer by as much as it costs the target is not asked about.</summary>
    [Property(MaxTest = 200)]
    public bool ColderPiece_IsNeverReadySooner(byte humidity, byte piece, byte colder)
    {
        double humidityPct = 20 + (humidity / 255.0 * 75);
        double pieceC = 22 - (piece / 255.0 * 15);
        PieceWarming warmer = Assess(humidityPct, pieceC, ThickBody).Warming!;
        PieceWarming cold = Assess(humidityPct, pieceC - (colder / 255.0 * 10), ThickBody).Warming!;
        return Ready(cold) * 1.001 >= Ready(warmer);
    }

    private static double Ready(PieceWarming warming) => warming.State == WarmingState.Warm ? 0 : warming.LeftS ?? double.PositiveInfinity;

    private static Assessment Assess(double humidityPct, double pieceC, CoatPlan plan, WarmingTrail? trail = null) => Assessor.Assess(
        GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothHumidity, humidityPct, 0.5), GoodBooth.Good(Quantity.PieceTemperature, pieceC, 0.3)),
        plan,
        trail);

    private static WarmingTrail Trail(int seconds, Func<double, double> pieceC)
    {
        WarmingTrail trail = new();
        for (int t = 0; t <= seconds; t++)
        {
            trail.Take(GoodBooth.Snapshot(GoodBooth.Good(Quantity.PieceTemperature, pieceC(t), 0.3) with { Age = TimeSpan.Zero }), TimeSpan.FromSeconds(t));
        }

        return trail;
    }
}
