using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts.Rules;

/// <summary>Blush margin, retarder, setting and trapping. The wanted margin here is 1.0 + 2 x 0.5 = 2.0 °C.</summary>
public class FilmRuleTests
{
    [Theory]
    [InlineData(-0.01, Verdict.Wait)]
    [InlineData(0.0, Verdict.SlowDown)]
    [InlineData(1.99, Verdict.SlowDown)]
    [InlineData(2.0, Verdict.Spray)]
    [InlineData(9.0, Verdict.Spray)]
    public void BlushMargin_CupMixed_AtEachEdge_Limits(double marginC, Verdict expected) =>
        Assert.Equal(expected, RuleCheck.Of(new BlushMargin(), GoodBooth.Evidence(film: GoodBooth.Film(marginC)))?.Limit);

    [Theory]
    [InlineData(0.0, 2.0, 1.0, 1.0)]
    [InlineData(1.0, 2.0, 1.0, 3.0)]
    [InlineData(0.5, 3.0, 1.0, 2.5)]
    [InlineData(0.5, 2.0, 0.0, 1.0)]
    public void BlushMargin_WantedMargin_IsRequiredPlusExpandedUncertainty(double uncertaintyC, double factor, double requiredC, double wantedC)
    {
        VerdictPolicy policy = new() { CoverageFactor = factor, RequiredMarginC = requiredC };
        Evidence at = GoodBooth.Evidence(film: GoodBooth.Film(wantedC, marginUncertaintyC: uncertaintyC), policy: policy);
        Evidence below = GoodBooth.Evidence(film: GoodBooth.Film(wantedC - 0.001, marginUncertaintyC: uncertaintyC), policy: policy);
        Assert.Equal(Verdict.Spray, RuleCheck.Of(new BlushMargin(), at)?.Limit);
        Assert.Equal(Verdict.SlowDown, RuleCheck.Of(new BlushMargin(), below)?.Limit);
    }

    [Fact]
    public void BlushMargin_OverWhatTheCupHolds_SaysByHowMuchAndWhatServes() => Assert.Equal(
        "dew point 17.8 °C, 0.6 °C over what this mix holds: add 8 mL more retarder (to 9 %) or wait",
        Say(GoodBooth.Film(-0.6, loadedPct: 5, recommendedPct: 9), 17.8));

    [Fact]
    public void BlushMargin_OverWhatAnyLevelHolds_SaysWhatTheHighestLeaves() => Assert.Equal(
        "dew point 22.4 °C, 3.1 °C over what this mix holds: wait for drier air, no retarder level holds this air safely, even the highest leaves 0.5 °C of the 2.0 °C wanted",
        Say(GoodBooth.Film(-3.1, loadedPct: 5, recommendedPct: null, marginAtHighestC: 0.5), 22.4));

    [Fact]
    public void BlushMargin_OverWhatAnyLevelHolds_AtTheHighestToo_SaysByHowMuch() => Assert.Equal(
        "dew point 22.4 °C, 3.1 °C over what this mix holds: wait for drier air, no retarder level holds this air, even the highest is 0.7 °C over",
        Say(GoodBooth.Film(-3.1, loadedPct: 5, recommendedPct: null, marginAtHighestC: -0.7), 22.4));

    [Fact]
    public void BlushMargin_OnAPieceThatWarmingCures_AsksForTheWarmth_NotForDrierAir() => Assert.Equal(
        "dew point 13.5 °C, no retarder level holds this air on so cold a piece, even the highest is 0.7 °C over: wait, and warm the piece first",
        Say(GoodBooth.Film(-1.1, loadedPct: null, recommendedPct: null, marginAtHighestC: -0.7) with { HoldsWithWarmPiece = true }, 13.5));

    [Fact]
    public void BlushMargin_ThinMargin_SaysWhatIsWanted()
    {
        Assert.Equal(
            "dew point 15.0 °C, 1.2 °C under what this mix holds, 2.0 °C wanted: add 4 mL more retarder (to 7 %), or lay thin coats and watch the film",
            Say(GoodBooth.Film(1.2, loadedPct: 5, recommendedPct: 7), 15));
        Assert.Equal(
            "dew point 15.0 °C, 1.2 °C under what this mix holds, 2.0 °C wanted: no retarder level gives the full margin, the highest would make it 1.7 °C, lay thin coats and watch the film, or wait for drier air",
            Say(GoodBooth.Film(1.2, loadedPct: 10, recommendedPct: null, marginAtHighestC: 1.7), 15));
        Assert.Equal(
            "dew point 15.0 °C, 1.2 °C under what this mix holds, 2.0 °C wanted: more retarder would not help, lay thin coats and watch the film, or wait for drier air",
            Say(GoodBooth.Film(1.2, loadedPct: 15, recommendedPct: null, marginAtHighestC: 1.2), 15));
    }

    [Fact]
    public void BlushMargin_Holds_SaysSo() => Assert.Equal(
        "dew point 11.1 °C, 4.0 °C under what this mix holds, 2.0 °C wanted: spray, the 5 % retarder in the cup is enough",
        Say(GoodBooth.Film(4, loadedPct: 5, recommendedPct: 3), 11.1));

    [Fact]
    public void BlushMargin_NothingMixed_LevelServes_GivesTheDoseForTheCup()
    {
        Evidence evidence = GoodBooth.Evidence(film: GoodBooth.Film(2.3, loadedPct: null, recommendedPct: 9), air: GoodBooth.Air(dewPointC: 17.8));
        Reason? reason = RuleCheck.Of(new BlushMargin(), evidence);
        Assert.Equal(Verdict.Spray, reason?.Limit);
        Assert.Equal(
            "dew point 17.8 °C, 2.3 °C under what that mix holds, 2.0 °C wanted: add 18 mL retarder to 200 mL of mix (9 %) and spray",
            reason?.ToString());
    }

    [Fact]
    public void BlushMargin_NothingMixed_NoneNeeded_SaysSo() => Assert.Equal(
        "dew point 8.0 °C, 6.0 °C under what this mix holds, 2.0 °C wanted: spray, no retarder needed",
        Say(GoodBooth.Film(6, loadedPct: null, recommendedPct: 0), 8));

    [Fact]
    public void BlushMargin_NothingMixed_NoneServes_WaitsThoughTheMarginIsPositive()
    {
        Evidence evidence = GoodBooth.Evidence(
            film: GoodBooth.Film(0.8, loadedPct: null, recommendedPct: null, marginAtHighestC: 0.8), air: GoodBooth.Air(dewPointC: 21));
        Reason? reason = RuleCheck.Of(new BlushMargin(), evidence);
        Assert.Equal(Verdict.Wait, reason?.Limit);
        Assert.Equal(
            "dew point 21.0 °C, no retarder level holds this air safely, even the highest leaves 0.8 °C of the 2.0 °C wanted: wait for drier air",
            reason?.ToString());
    }

    [Fact]
    public void BlushMargin_NothingMixed_RecommendedLevelDoesNotCoverTheWantedMargin_Waits() => Assert.Equal(
        Verdict.Wait,
        RuleCheck.Of(new BlushMargin(), GoodBooth.Evidence(film: GoodBooth.Film(1.99, loadedPct: null, recommendedPct: 9)))?.Limit);

    [Theory]
    [InlineData(-0.6, 9.0)]
    [InlineData(1.2, 9.0)]
    [InlineData(-0.6, 5.0)]
    public void BlushMargin_RecommendedLevelIsNoMoreThanTheCup_DoesNotAskToRaiseIt(double marginC, double loadedPct)
    {
        Reason? reason = RuleCheck.Of(
            new BlushMargin(), GoodBooth.Evidence(film: GoodBooth.Film(marginC, loadedPct: loadedPct, recommendedPct: 5)));
        Assert.DoesNotContain("add ", reason?.Action, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, true)]
    [InlineData(true, true)]
    [InlineData(false, false)]
    public void BlushMargin_AgainstAPieceNearTheDewPoint_LeadsOnlyWhereWarmingIsNotEnough(bool? holdsWithWarmPiece, bool pieceLeads)
    {
        FilmFindings film = GoodBooth.Film(-1.7, loadedPct: 5, recommendedPct: null, marginAtHighestC: 0.2) with { HoldsWithWarmPiece = holdsWithWarmPiece };
        Evidence rain = GoodBooth.Evidence(film: film, air: GoodBooth.Air(22.1, 91, 20.1, pieceC: 20.2));
        Reason first = RuleBook.Decide(rain)[0];
        Assert.Equal(pieceLeads ? "piece-near-dew-point" : "blush-margin", first.Rule);
        Assert.StartsWith(pieceLeads ? "wait, and warm the piece to 23.1 °C or more" : "wait for drier air, no retarder level", first.Action, StringComparison.Ordinal);
        string? piece = RuleCheck.Of(new PieceNearDewPoint(), rain)?.Action;
        Assert.Equal(!pieceLeads, piece!.Contains("warming the piece alone, to 23.1 °C, will not do", StringComparison.Ordinal));
    }

    [Fact]
    public void BlushMargin_InFahrenheit_ConvertsDifferencesWithoutTheOffset()
    {
        // 17.8 °C = 64.04 °F; a difference of 0.6 °C is 1.08 °F.
        VerdictPolicy policy = new VerdictPolicy().SpeakingIn(TemperatureUnit.Fahrenheit);
        Evidence evidence = GoodBooth.Evidence(
            film: GoodBooth.Film(-0.6, loadedPct: 5, recommendedPct: 9), air: GoodBooth.Air(dewPointC: 17.8), policy: policy);
        Assert.Equal(
            "dew point 64.0 °F, 1.1 °F over what this mix holds: add 8 mL more retarder (to 9 %) or wait",
            RuleCheck.Of(new BlushMargin(), evidence)?.ToString());
    }

    [Fact]
    public void FilmAnswered_NoFilm_WaitsWithTheCause()
    {
        Evidence none = GoodBooth.Evidence() with { Film = null, NoFilmCause = "step size fell below 1e-9 s" };
        Reason? reason = RuleCheck.Of(new FilmAnswered(), none);
        Assert.Equal(Verdict.Wait, reason?.Limit);
        Assert.Equal("blush margin unknown (step size fell below 1e-9 s)", reason?.Finding);
        Assert.Null(RuleCheck.Of(new FilmAnswered(), GoodBooth.Evidence()));
    }

    public static TheoryData<string> NotNumbers =>
        ["margin", "uncertainty", "negative uncertainty", "retarder", "highest", "loaded", "recommended"];

    [Theory]
    [MemberData(nameof(NotNumbers))]
    public void FilmAnswered_AFigureIsNotANumber_WaitsAndBlushMarginIsSilent(string which)
    {
        FilmFindings film = GoodBooth.Film();
        film = which switch
        {
            "margin" => film with { BlushMarginC = double.NaN },
            "uncertainty" => film with { MarginUncertaintyC = double.NaN },
            "negative uncertainty" => film with { MarginUncertaintyC = -1 },
            "retarder" => film with { RetarderPct = double.NaN },
            "highest" => film with { MarginAtHighestRetarderC = double.PositiveInfinity },
            "loaded" => film with { LoadedRetarderPct = double.NaN },
            _ => film with { RecommendedRetarderPct = double.NaN },
        };
        Evidence evidence = GoodBooth.Evidence(film: film);
        Assert.Equal(Verdict.Wait, RuleCheck.Limit(new FilmAnswered(), evidence));
        Assert.Empty(new BlushMargin().Judge(evidence));
    }

    [Theory]
    [InlineData(240.0, Verdict.Spray)]
    [InlineData(null, Verdict.Wait)]
    [InlineData(0.0, Verdict.Wait)]
    [InlineData(double.NaN, Verdict.Wait)]
    [InlineData(double.PositiveInfinity, Verdict.Wait)]
    public void FilmSets_EachAnswer_Limits(double? timeToSetS, Verdict expected) => Assert.Equal(
        expected, RuleCheck.Limit(new FilmSets(), GoodBooth.Evidence(film: GoodBooth.Film() with { TimeToSetS = timeToSetS })));

    [Fact]
    public void SolventTrapping_Risk_SlowsDown()
    {
        Assert.Null(RuleCheck.Of(new SolventTrapping(), GoodBooth.Evidence()));
        Assert.Equal(
            Verdict.SlowDown,
            RuleCheck.Limit(new SolventTrapping(), GoodBooth.Evidence(film: GoodBooth.Film() with { SolventTrappingRisk = true })));
    }

    [Theory]
    [InlineData(10.0, Verdict.Spray)]
    [InlineData(10.5, Verdict.SlowDown)]
    [InlineData(15.0, Verdict.SlowDown)]
    public void MuchRetarder_AtEachEdge_SlowsDownMixedOrNot(double pct, Verdict expected)
    {
        Assert.Equal(expected, RuleCheck.Limit(new MuchRetarder(), GoodBooth.Evidence(film: GoodBooth.Film(loadedPct: pct, recommendedPct: pct))));
        Assert.Equal(expected, RuleCheck.Limit(new MuchRetarder(), GoodBooth.Evidence(film: GoodBooth.Film(loadedPct: null, recommendedPct: pct))));
    }

    [Fact]
    public void MuchRetarder_NothingMixedAndNoneServes_IsSilent() => Assert.Null(
        RuleCheck.Of(new MuchRetarder(), GoodBooth.Evidence(film: GoodBooth.Film(loadedPct: null, recommendedPct: null, usedPct: 15))));

    [Fact]
    public void MuchRetarder_NothingMixed_GivesTheDoseForTheCup() => Assert.Equal(
        "this air asks for 12 % retarder (24 mL to the 200 mL cup), over 10 %",
        RuleCheck.Of(new MuchRetarder(), GoodBooth.Evidence(film: GoodBooth.Film(loadedPct: null, recommendedPct: 12)))?.Finding);

    [Theory]
    [InlineData(7.9, 3.0, false)]
    [InlineData(8.0, 3.0, true)]
    [InlineData(3.0, 8.0, false)]
    public void SpareRetarder_FromFivePointsOn_IsARemarkOnly(double loadedPct, double recommendedPct, bool speaks)
    {
        Reason? reason = RuleCheck.Of(
            new SpareRetarder(), GoodBooth.Evidence(film: GoodBooth.Film(loadedPct: loadedPct, recommendedPct: recommendedPct)));
        Assert.Equal(speaks, reason is not null);
        Assert.True(reason is null or { Limit: Verdict.Spray });
    }

    private static string? Say(FilmFindings film, double dewPointC) =>
        RuleCheck.Of(new BlushMargin(), GoodBooth.Evidence(film: film, air: GoodBooth.Air(dewPointC: dewPointC)))?.ToString();
}
