using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Verdicts;

public class AssessorTests
{
    private readonly Assessor _assessor = new(GoodBooth.RoundLimits, FakeFilm.Ask, altitudeM: 0);

    [Fact]
    public void Assess_GoodBooth_SpraysAndCarriesEverything()
    {
        Assessment assessment = _assessor.Assess(GoodBooth.Snapshot(), FakeFilm.Plan());
        Assert.Equal(Verdict.Spray, assessment.Verdict);
        Assert.Equal(GoodBooth.Noon, assessment.Time);
        Assert.Equal("blush-margin", assessment.Reasons[0].Rule);
        Assert.Equal(21.5, assessment.Air?.PieceTemperatureC);
        Assert.Equal("clear", assessment.Film?.Coat);
    }

    /// <summary>The dew point of 20 °C and 50 % is 9.3 °C, of 25 °C and 60 % 16.7 °C (psychrometric tables).</summary>
    [Theory]
    [InlineData(20, 50, 9.3)]
    [InlineData(25, 60, 16.7)]
    public void Assess_Air_IsTheAirOfTheReadings(double temperatureC, double humidityPct, double dewPointC)
    {
        AirFindings? air = _assessor.Assess(
            GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothTemperature, temperatureC), GoodBooth.Good(Quantity.BoothHumidity, humidityPct, 1)),
            FakeFilm.Plan()).Air;
        Assert.Equal(dewPointC, air!.DewPointC, 0.05);
        Assert.InRange(air.DewPointUncertaintyC, 0.1, 0.6);
    }

    [Fact]
    public void Assess_NothingMixed_GivesTheDoseForTheCup()
    {
        // 22 °C and 60 %: dew point 13.9 °C, so the stand-in model wants 3.9 °C and some uncertainty more than none gives.
        FilmFindings? film = _assessor.Assess(GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothHumidity, 60, 0.5)), FakeFilm.Plan()).Film;
        Assert.Equal(7, film?.RecommendedRetarderPct);
        Assert.Equal(14, film?.RecommendedRetarderMl);
        Assert.Equal(7, film?.RetarderPct);
    }

    // 15 % carry a dew point of 19.5 °C in the stand-in model. Dew point of 22 °C: 18.4 °C at 80 %, 16.9 °C at 73 %.
    [Theory]
    [InlineData(80, Verdict.Wait, "Wait")]
    [InlineData(73, Verdict.SlowDown, "15 %")]
    public void Assess_ALimitThatTheShopsCoatsRaised_IsSaidByTheRetarderToo(double humidityPct, Verdict verdict, string mark)
    {
        Assessor raised = new(GoodBooth.RoundLimits.WithShopLimit(3, 2, coats: 12), FakeFilm.Ask, altitudeM: 0);
        Assessment assessment = raised.Assess(GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothHumidity, humidityPct, 0.5)), FakeFilm.Plan(loadedPct: 15));
        Assert.InRange(assessment.Film!.BlushMarginC, 0, 3);
        Assert.Equal(verdict, assessment.Reasons.Single(reason => reason.Rule == "blush-margin").Limit);
        Assert.Equal(mark, RetarderDose.Mark(assessment.Film));
    }

    [Fact]
    public void Assess_NoLevelServes_HasNoDose()
    {
        Assessment assessment = _assessor.Assess(GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothHumidity, 85, 0.5)), FakeFilm.Plan());
        Assert.Null(assessment.Film?.RecommendedRetarderMl);
        Assert.Equal(Verdict.Wait, assessment.Verdict);
    }

    // 22 °C and 70 %: dew point 16.3 °C; a piece clear of it needs no question, a colder one is asked about at 19.3 °C.
    [Theory]
    [InlineData(21.0, 0.0, null)]
    [InlineData(17.0, 0.0, true)]
    [InlineData(17.0, -0.1, false)]
    public void Assess_PieceNearTheDewPoint_AsksWhetherWarmingItWouldDo(double pieceC, double warmMarginC, bool? expected)
    {
        BlushAnswer Ask(CoatPlan plan, MoistAir air, double pieceTemperatureC, AirUncertainty u, double pieceU, double required, double factor) =>
            FakeFilm.Ask(plan, air, pieceTemperatureC, u, pieceU, required, factor) with
            {
                BlushMarginC = pieceTemperatureC >= air.DewPointC + 3 ? warmMarginC : -2,
            };
        Assessor asking = new(new VerdictPolicy(), Ask, 0);
        FilmFindings? film = asking.Assess(
            GoodBooth.Snapshot(GoodBooth.Good(Quantity.BoothHumidity, 70, 0.5), GoodBooth.Good(Quantity.PieceTemperature, pieceC, 0.3)),
            FakeFilm.Plan(loadedPct: 5)).Film;
        Assert.Equal(expected, film?.HoldsWithWarmPiece);
    }

    [Fact]
    public void Assess_AfterTheLimitsChanged_AsksAndJudgesWithTheNewOnes()
    {
        VerdictPolicy inForce = new();
        List<double> asked = [];
        BlushAnswer Ask(CoatPlan plan, MoistAir air, double pieceTemperatureC, AirUncertainty u, double pieceU, double required, double factor)
        {
            asked.Add(required);
            return FakeFilm.Ask(plan, air, pieceTemperatureC, u, pieceU, required, factor) with { BlushMarginC = 2.6, MarginUncertaintyC = 1 };
        }

        Assessor assessor = new(() => inForce, Ask, 0);
        Assert.Equal(Verdict.Spray, assessor.Assess(GoodBooth.Snapshot(), FakeFilm.Plan(loadedPct: 5)).Verdict);
        inForce = inForce.WithShopLimit(1.2, 0.9, 34);
        Assert.Equal(Verdict.SlowDown, assessor.Assess(GoodBooth.Snapshot(), FakeFilm.Plan(loadedPct: 5)).Verdict);
        Assert.Equal([0.5, 1.2], asked.Distinct());
    }

    [Fact]
    public void Assess_SolverGivesUp_WaitsWithItsWords()
    {
        Assessor failing = new(
            new VerdictPolicy(), (_, _, _, _, _, _, _) => throw new DryingFailedException("drying run: no step at 12 s"), 0);
        Assessment assessment = failing.Assess(GoodBooth.Snapshot(), FakeFilm.Plan());
        Assert.Equal(Verdict.Wait, assessment.Verdict);
        Assert.Null(assessment.Film);
        Assert.Equal(
            "blush margin unknown (the film model gave no answer: drying run: no step at 12 s): wait until it is known",
            Assert.Single(assessment.Reasons).ToString());
    }

    [Fact]
    public void Assess_AnyOtherException_IsNotSwallowed()
    {
        Assessor broken = new(new VerdictPolicy(), (_, _, _, _, _, _, _) => throw new InvalidOperationException("a defect"), 0);
        Assert.Throws<InvalidOperationException>(() => broken.Assess(GoodBooth.Snapshot(), FakeFilm.Plan()));
    }

    [Fact]
    public void Assess_NoCoatChosen_Waits()
    {
        Assessment assessment = _assessor.Assess(GoodBooth.Snapshot(), null);
        Assert.Equal(Verdict.Wait, assessment.Verdict);
        Assert.Contains("no coat is chosen", assessment.Reasons[0].Finding, StringComparison.Ordinal);
    }

    [Fact]
    public void Assess_NoBarometer_TakesThePressureOfTheAltitude()
    {
        // ICAO standard atmosphere: 1,000 m is 89,875 Pa.
        Assessor high = new(new VerdictPolicy(), FakeFilm.Ask, altitudeM: 1000);
        Assessment assessment = high.Assess(GoodBooth.Snapshot().Without(Quantity.StationPressure), FakeFilm.Plan());
        Assert.Equal(89_875, assessment.Air!.PressurePa, 5.0);
        Assert.Equal(Verdict.Spray, assessment.Verdict);
        Assert.Contains(assessment.Reasons, reason => reason.Rule == "pressure-assumed");
    }

    [Theory]
    [InlineData(true, null, 0.0)]
    [InlineData(false, 22.0, 2.0)]
    public void Assess_PieceNotMeasured_IsTakenAsWarmAsTheAirOnlyWherePolicyAllows(bool required, double? askedC, double askedUncertaintyC)
    {
        (double? PieceC, double UncertaintyC) asked = (null, 0);
        Assessor watching = new(
            new VerdictPolicy { RequirePieceTemperature = required },
            (plan, air, piece, uncertainty, pieceUncertainty, margin, factor) =>
            {
                asked = (piece, pieceUncertainty);
                return FakeFilm.Ask(plan, air, piece, uncertainty, pieceUncertainty, margin, factor);
            },
            0);
        Assessment assessment = watching.Assess(GoodBooth.Snapshot().Without(Quantity.PieceTemperature), FakeFilm.Plan());
        Assert.Equal((askedC, askedUncertaintyC), asked);
        Assert.Equal(required ? Verdict.Wait : Verdict.Spray, assessment.Verdict);
        Assert.Null(assessment.Air?.PieceTemperatureC);
    }

    [Fact]
    public void Assess_EmptySnapshot_WaitsWithEveryCause()
    {
        BoothSnapshot empty = new(GoodBooth.Noon, ClockProven: false, System.Collections.Immutable.ImmutableDictionary<Quantity, Reading>.Empty);
        Assessment assessment = _assessor.Assess(empty, null);
        Assert.Equal(Verdict.Wait, assessment.Verdict);
        Assert.Equal(
            ["exhaust-not-proven", "booth-air-unknown", "piece-unknown", "no-film-answer", "clock-unproven"],
            assessment.Reasons.Select(reason => reason.Rule));
        Assert.Null(assessment.Air);
    }
}
