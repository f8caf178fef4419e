using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Reviews;
using BoothWatch.Solvents;
using BoothWatch.Tests.Film;
using BoothWatch.Verdicts;
using FsCheck.Xunit;
using static BoothWatch.Tests.Reviews.SampleReview;

namespace BoothWatch.Tests.Reviews;

/// <summary>Reviews of made-up air whose answer is known beforehand.</summary>
public class CoatReviewerTests
{
    [Theory]
    [InlineData(-3)]
    [InlineData(-1)]
    [InlineData(0.7)]
    [InlineData(4)]
    public void Margin_InConstantAir_IsTheOrdinaryBlushMargin(double marginC)
    {
        CoatReview review = CoatReviewer.Review(Case(Constant(LimitC() - marginC)));
        Assert.Equal(marginC, review.Figures!.MarginC, 0.02);
        Assert.Equal(marginC, review.Figures.LeastMomentMarginC, 0.05);
        Assert.Equal(marginC < 0, review.Figures.WaterAtSetGPerM2 > review.Figures.ToleranceGPerM2);
        Assert.Equal(marginC < 0, review.Figures.MarginNegativeSince is not null);
    }

    [Theory]
    [InlineData(-2.5)]
    [InlineData(-1.5)]
    [InlineData(-0.5)]
    [InlineData(0.6)]
    [InlineData(1.1)]
    [InlineData(1.3)]
    public void Retarder_InConstantAir_IsWhatTheModelRecommends(double marginC)
    {
        double dewPointC = LimitC() - marginC;
        ReviewCase coat = Case(Constant(dewPointC));
        BlushAnswer answer = new BlushModel().Assess(
            coat.Plan, MoistAir.FromDewPoint(AirC, dewPointC, PressurePa), AirC, Uncertainty, PieceUncertaintyC, coat.Policy.RequiredMarginC, coat.Policy.CoverageFactor);
        CoatReview review = CoatReviewer.Review(coat);
        Assert.Equal(answer.RecommendedRetarderPct, Remedy(review, ReviewRemedyKind.Retarder).Value);
        Assert.Equal(answer.MarginUncertaintyC, review.Figures!.MarginUncertaintyC, 0.03);
    }

    [Fact]
    public void Waiting_UntilTheAirIsDrier_HoldsFromThatTimeOn()
    {
        double limitC = LimitC();
        CoatReview review = CoatReviewer.Review(Case(Recorded(minute => (AirC, limitC + (minute < 120 ? 1 : -5), AirC))));
        ReviewRemedy later = Remedy(review, ReviewRemedyKind.Later);
        Assert.Equal(Noon.AddMinutes(120), later.At);
        Assert.Equal("waiting until 14:00", later.Words);
        Assert.DoesNotContain(review.Remedies, remedy => remedy.Kind == ReviewRemedyKind.Earlier);
    }

    [Fact]
    public void Waiting_WhereItNeverDries_SaysSoAndNamesTheMorning()
    {
        double limitC = LimitC();
        CoatReview review = CoatReviewer.Review(Case(Recorded(minute => (AirC, limitC + (minute < -60 ? -5 : 1), AirC))));
        Assert.False(Remedy(review, ReviewRemedyKind.Later).Holds);
        Assert.Contains("no start up to", Remedy(review, ReviewRemedyKind.Later).Words, StringComparison.Ordinal);

        // A coat that lands at 10:50 has set before 11:00.
        Assert.True(review.Figures!.TimeToSetS < 600);
        Assert.Equal(Noon.AddMinutes(-70), Remedy(review, ReviewRemedyKind.Earlier).At);
    }

    [Fact]
    public void Waiting_WithoutLaterAir_IsNotKnown()
    {
        double limitC = LimitC();
        CoatReview review = CoatReviewer.Review(Case(Recorded(minute => minute < 30 ? (AirC, limitC + 1, AirC) : null)));
        Assert.True(review.Figures!.TimeToSetS < 900);
        ReviewRemedy later = Remedy(review, ReviewRemedyKind.Later);
        Assert.False(later.Holds);
        Assert.Contains("as far as the air is recorded", later.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Rain_ArrivingWhileTheFilmIsOpen_IsTheCauseAndNotTheStart()
    {
        // The film is open for more than 20 minutes; the rain comes after 10.
        double limitC = LimitC(wetFilmUm: 500, cup: SlowCup);
        CoatReview review = CoatReviewer.Review(Case(Recorded(minute => (AirC, minute < 10 ? limitC - 6 : limitC + 2, AirC)), wetFilmUm: 500, cup: SlowCup, usualUm: 500));
        Assert.True(review.Figures!.TimeToSetS > 20 * 60, $"set after {review.Figures.TimeToSetS} s");
        Assert.Equal(ReviewFinding.Blushes, review.Finding);
        Assert.Equal(ReviewCauseKind.AirGrewWetter, review.Causes[0].Kind);
        Assert.DoesNotContain(review.Causes, cause => cause.Kind is ReviewCauseKind.AirTooWet or ReviewCauseKind.TooLittleRetarder);
        Assert.Contains("the air grew wetter", review.Headline, StringComparison.Ordinal);
        Assert.Equal(Noon.AddMinutes(10), review.Figures.MarginNegativeSince);
    }

    [Fact]
    public void Air_TooWetFromTheStart_NamesTheRetarderThatWasMissing()
    {
        // A flash coat, four parts of thinner to one of lacquer, where retarder goes far.
        Mix flash = TestCoat.Thinned("ordinary thinner", 4);
        double limitC = LimitC(wetFilmUm: 40, cup: flash);
        ReviewCase coat = Case(Constant(limitC + 0.4), wetFilmUm: 40, cup: flash, usualUm: 40);
        CoatReview review = CoatReviewer.Review(coat);
        ReviewCause cause = Assert.Single(review.Causes);
        Assert.Equal(ReviewCauseKind.TooLittleRetarder, cause.Kind);
        Assert.Equal(0.4, cause.CostC, 0.02);

        // With all the margin that a shop wants by default no level serves; one that wants less has one.
        double edgePct = Remedy(review, ReviewRemedyKind.Retarder).EdgeValue!.Value;
        Assert.Contains($"{edgePct} % would just carry it", cause.Words, StringComparison.Ordinal);
        CoatReview bolder = CoatReviewer.Review(coat with { Policy = new VerdictPolicy { RequiredMarginC = 0, CoverageFactor = 1 } });
        ReviewRemedy retarder = Remedy(bolder, ReviewRemedyKind.Retarder);
        Assert.True(retarder.Holds);
        Assert.InRange(edgePct, 1, retarder.Value!.Value - 1);
        Assert.Contains($"{retarder.Value} % would carry it through", bolder.Headline, StringComparison.Ordinal);
        Assert.Contains($"What would have held: {retarder.Value} % of retarder", bolder.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Air_TooWetForEveryLevel_SaysSo()
    {
        CoatReview review = CoatReviewer.Review(Case(Constant(AirC - 0.2)));
        Assert.Equal(ReviewCauseKind.AirTooWet, review.Causes[0].Kind);
        Assert.All(review.Remedies, remedy => Assert.False(remedy.Holds));
    }

    [Fact]
    public void Recommendation_ThatWasNotFollowed_IsNamed() => Assert.Contains(
        "7 % was recommended",
        CoatReviewer.Review(Case(Constant(LimitC() + 1), recommendedPct: 7)).Causes[0].Words,
        StringComparison.Ordinal);

    [Fact]
    public void Film_LaidOnHeavy_IsTheCauseAndAThinnerOneTheRemedy()
    {
        // Air in which the usual 75 µm have room to spare, and 200 µm have not.
        double heavyC = LimitC(wetFilmUm: 200);
        ReviewCase coat = Case(Constant(heavyC + 0.1), wetFilmUm: 200) with { Policy = new VerdictPolicy { RequiredMarginC = 0, CoverageFactor = 1 } };
        CoatReview review = CoatReviewer.Review(coat);
        Assert.Equal(ReviewCauseKind.HeavyFilm, review.Causes[0].Kind);
        Assert.Equal(LimitC() - heavyC, review.Causes[0].CostC, 0.03);
        ReviewRemedy thinner = Remedy(review, ReviewRemedyKind.ThinnerFilm);
        double wantedC = review.Figures!.WantedMarginC;
        Assert.True(thinner.Holds, $"{wantedC} °C wanted: {thinner.Words}");
        Assert.True(LimitC(wetFilmUm: thinner.Value!.Value) - heavyC - 0.1 >= wantedC - 0.02);
        Assert.True(LimitC(wetFilmUm: thinner.Value.Value + 5) - heavyC - 0.1 < wantedC + 0.02);
        Assert.True(LimitC(wetFilmUm: thinner.EdgeValue!.Value) >= heavyC + 0.1 - 0.01);
        Assert.True(LimitC(wetFilmUm: thinner.EdgeValue.Value + 5) < heavyC + 0.1 + 0.01);
    }

    [Fact]
    public void Piece_BroughtInCold_IsTheCauseAndAWarmerOneTheRemedy()
    {
        double coldC = LimitC(pieceC: 18);
        CoatReview review = CoatReviewer.Review(Case(Constant(coldC + 0.2, pieceC: 18)));
        Assert.Equal(ReviewCauseKind.ColdPiece, review.Causes[0].Kind);
        Assert.Equal(LimitC() - coldC, review.Causes[0].CostC, 0.03);
        ReviewRemedy warmer = Remedy(review, ReviewRemedyKind.WarmerPiece);
        Assert.True(warmer.Holds);
        Assert.True(LimitC(pieceC: warmer.Value) - coldC - 0.2 >= review.Figures!.WantedMarginC - 0.02);
        Assert.True(LimitC(pieceC: warmer.Value - 0.5) - coldC - 0.2 < review.Figures.WantedMarginC + 0.02);
    }

    [Fact]
    public void Blush_WithMarginToSpare_IsNotExplainedByTheAir()
    {
        CoatReview review = CoatReviewer.Review(Case(Constant(LimitC() - 6)));
        Assert.Equal(ReviewFinding.Holds, review.Finding);
        Assert.Contains("does not explain", review.Headline, StringComparison.Ordinal);
        Assert.Empty(review.Causes);
        Assert.Empty(review.Remedies);
        Assert.Contains(review.Checks, check => check.Contains("compressed air", StringComparison.Ordinal));
    }

    [Fact]
    public void Blush_WithinTheUncertainty_IsCalledPossible()
    {
        CoatReview review = CoatReviewer.Review(Case(Constant(LimitC() - 0.3)));
        Assert.Equal(ReviewFinding.MayBlush, review.Finding);
        Assert.Contains("may explain", review.Headline, StringComparison.Ordinal);
        Assert.Equal(ReviewCauseKind.NearTheLimit, Assert.Single(review.Causes).Kind);
    }

    [Property(MaxTest = 20)]
    public void Margin_OfAirThatChanges_FallsByWhatTheDewPointRises(byte start, sbyte perTenMinutes, byte raised)
    {
        // By its definition; a test of the search in changing air. Between 10 and 17 °C, rising or falling by up to 2 °C in 10 minutes.
        double startC = 10 + (start / 85.0);
        double slope = perTenMinutes / 64.0 / 10;
        double byC = raised / 128.0;
        double MarginC(double more) => CoatReviewer.Review(Case(
            Recorded(minute => (AirC, startC + more + (slope * Math.Clamp(minute, 0, 20)), AirC)), CoatOutcome.Runs, wetFilmUm: 500, cup: SlowCup, usualUm: 500)).Figures!.MarginC;
        Assert.Equal(MarginC(0) - byC, MarginC(byC), 0.03);
    }

    [Fact]
    public void Air_NotRecorded_IsNotGuessed()
    {
        CoatReview none = CoatReviewer.Review(Case(Recorded(minute => minute is < -30 or > 30 ? (AirC, 12, AirC) : null)));
        Assert.Equal(ReviewFinding.NotKnown, none.Finding);
        Assert.Contains("no booth air was recorded at 12:00", none.Headline, StringComparison.Ordinal);
        Assert.Null(none.Figures);
        Assert.Empty(none.Causes);
        Assert.Empty(none.Remedies);

        CoatReview noPiece = CoatReviewer.Review(Case(Constant(12, pieceC: null)));
        Assert.Equal(ReviewFinding.NotKnown, noPiece.Finding);
        Assert.Contains("piece", noPiece.Headline, StringComparison.Ordinal);

        CoatReview cutShort = CoatReviewer.Review(Case(Recorded(minute => minute < 10 ? (AirC, 12, AirC) : null), wetFilmUm: 500, cup: SlowCup));
        Assert.Equal(ReviewFinding.NotKnown, cutShort.Finding);
        Assert.Contains("recorded until 12:10", cutShort.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Landing_JustBeforeTheFirstRecordAfterAGap_TakesThatRecord()
    {
        // Wet until 11:40, then nothing until 12:01, and dry from then on.
        double limitC = LimitC();
        ReviewFigures figures = CoatReviewer.Review(Case(Recorded(minute => minute < -20 ? (AirC, limitC + 1, AirC) : minute >= 1 ? (AirC, limitC - 4, AirC) : null))).Figures!;
        Assert.Null(figures.MarginNegativeSince);
        Assert.Equal(4, figures.LeastMomentMarginC, 0.05);
    }

    [Theory]
    [InlineData(-16, -10, -10)] // six minutes are missing: what was before them says nothing of them
    [InlineData(-15, -10, -60)] // five are bridged, and the drawing begins an hour before
    public void NoMargin_IsCountedBackToALongGapOnly(int gapFrom, int gapTo, int since)
    {
        double limitC = LimitC();
        CoatReview review = CoatReviewer.Review(Case(Recorded(minute => minute >= gapFrom && minute < gapTo ? null : (AirC, limitC + 1, AirC))));
        Assert.Equal(Noon.AddMinutes(since), review.Figures!.MarginNegativeSince);
    }

    [Fact]
    public void Gap_OfAFewMinutes_IsBridged() => Assert.Equal(
        CoatReviewer.Review(Case(Constant(LimitC() + 1))).Figures!.MarginC,
        CoatReviewer.Review(Case(Recorded(minute => minute is 2 or 3 or 4 ? null : (AirC, LimitC() + 1, AirC)))).Figures!.MarginC,
        0.02);

    [Theory]
    [InlineData(CoatOutcome.Runs, "says nothing on runs")]
    [InlineData(CoatOutcome.DrySpray, "does not explain it")]
    [InlineData(CoatOutcome.OrangePeel, "does not explain it")]
    [InlineData(CoatOutcome.Soft, "until it sets, not until it is hard")]
    [InlineData(CoatOutcome.Clear, "came out clear, as the model expects")]
    public void OtherOutcome_InMildAir_GetsOnlyWhatTheModelCanSay(CoatOutcome outcome, string says)
    {
        CoatReview review = CoatReviewer.Review(Case(Constant(10, pieceC: 21, airC: 21), outcome));
        Assert.Contains(says, review.Headline, StringComparison.Ordinal);
        Assert.DoesNotContain("blush", review.Headline.Replace("blush margin", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
        Assert.NotEmpty(review.Film);
    }

    [Fact]
    public void DrySpray_InHotDraughtyAir_IsPutDownToFastDrying() => Assert.StartsWith(
        "It dried fast",
        CoatReviewer.Review(Case(Constant(5, pieceC: 34, airC: 34), CoatOutcome.DrySpray, airSpeed: 1.5)).Headline,
        StringComparison.Ordinal);

    [Fact]
    public void Soft_WithMuchRetarder_NamesTheRetarder() => Assert.Contains(
        "15 % of retarder",
        CoatReviewer.Review(Case(Constant(10), CoatOutcome.Soft, retarderPct: 15)).Headline,
        StringComparison.Ordinal);

    [Fact]
    public void Film_AgainstTheDewPoint_AgreesWithItsOwnTrajectory()
    {
        CoatReview review = CoatReviewer.Review(Case(Constant(LimitC() + 1)));
        ReviewFigures figures = review.Figures!;
        ReviewFilmPoint first = review.Film.First(point => point.FilmTemperatureC < point.DewPointC);
        Assert.InRange(figures.BelowDewPointAfterS!.Value, 0, (first.Time - review.Landed).TotalSeconds);
        Assert.Equal(review.Film.Max(point => point.DewPointC - point.FilmTemperatureC), figures.BelowDewPointByC, 6);
        Assert.InRange(figures.BelowDewPointForS, 1, figures.TimeToSetS!.Value);
        Assert.Equal(review.Set, review.Film[^1].Time);
        Assert.Equal(figures.WaterAtSetGPerM2, review.Film[^1].WaterGPerM2, 6);
    }

    private static ReviewRemedy Remedy(CoatReview review, ReviewRemedyKind kind) => Assert.Single(review.Remedies, remedy => remedy.Kind == kind);
}
