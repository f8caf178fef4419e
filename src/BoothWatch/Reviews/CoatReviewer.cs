using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Reviews;

/// <summary>Runs a past coat again in the air that was recorded, and says what happened, why, and what would have held. docs/review.md has the method.</summary>
public static class CoatReviewer
{
    /// <summary>How long before the landing the review begins.</summary>
    public static readonly TimeSpan Before = TimeSpan.FromHours(1);

    /// <summary>How long after the landing it ends.</summary>
    public static readonly TimeSpan After = TimeSpan.FromHours(2);

    /// <summary>Reviews a coat.</summary>
    /// <param name="coat">The coat and its air.</param>
    /// <param name="parameters">Model parameters; null: <see cref="FilmParameters.Default"/>.</param>
    /// <exception cref="ArgumentException">The plan of the coat is wrong; the message names what.</exception>
    public static CoatReview Review(ReviewCase coat, FilmParameters? parameters = null)
    {
        ArgumentNullException.ThrowIfNull(coat);
        parameters ??= FilmParameters.Default;
        ReviewWords words = new(coat);
        TimeSpan longest = TimeSpan.FromSeconds(parameters.LongestRunS);
        if (coat.Air.At(coat.Landing) is not { } landing || coat.Air.CourseFrom(coat.Landing, longest) is not { } course)
        {
            return NotKnown(coat, words.NoAir());
        }

        if (landing.PieceTemperatureC is not { } pieceC)
        {
            return NotKnown(coat, words.NoPiece());
        }

        if (CoatConditionsCheck.Outside(landing.TemperatureC, pieceC, coat.PressurePa, reserveC: 2) is { } problem)
        {
            return NotKnown(coat, words.NoModel(problem));
        }

        try
        {
            Replay sprayed = new(ConditionsOf(coat, pieceC), course, parameters);
            DryingResult run = sprayed.Run(keepTrajectory: true);
            double openS = run.TimeToSetS ?? parameters.LongestRunS;
            DateTimeOffset knownUntil = coat.Air.KnownUntil(coat.Landing)!.Value;
            return knownUntil + RecordedAir.LongestBridge < coat.Landing.AddSeconds(openS)
                ? NotKnown(coat, words.NotLongEnough(knownUntil))
                : Reviewed(coat, sprayed.With(course: coat.Air.CourseFrom(coat.Landing, Horizon(openS, longest))), run, words, parameters);
        }
        catch (DryingFailedException failed)
        {
            return NotKnown(coat, words.NoModel(failed));
        }
    }

    private static CoatReview Reviewed(ReviewCase coat, Replay sprayed, DryingResult run, ReviewWords words, FilmParameters parameters)
    {
        double openS = run.TimeToSetS ?? parameters.LongestRunS;
        MixMargin margin = sprayed.MarginWith(coat);
        double wantedC = coat.Policy.RequiredMarginC + (coat.Policy.CoverageFactor * margin.UncertaintyC);
        ReviewFinding finding = margin.MarginC < 0 ? ReviewFinding.Blushes
            : margin.MarginC < coat.Policy.CoverageFactor * margin.UncertaintyC ? ReviewFinding.MayBlush
            : ReviewFinding.Holds;
        bool explains = finding is ReviewFinding.Blushes or ReviewFinding.MayBlush;
        IReadOnlyList<ReviewCause> causes = explains ? new CauseFinder(coat, sprayed, openS, wantedC).Find() : [];
        IReadOnlyList<ReviewRemedy> remedies = explains ? new RemedyFinder(coat, sprayed, wantedC, Horizon(openS, TimeSpan.FromSeconds(parameters.LongestRunS))).Find() : [];
        IReadOnlyList<ReviewFilmPoint> film = [.. run.Trajectory.Select(point => FilmPoint(coat, sprayed.Air, point))];
        IReadOnlyList<ReviewAirPoint> air = AirAround(coat, sprayed.Conditions, parameters);
        (DateTimeOffset? since, double least) = NegativeMargin(coat, air, openS);
        (double? afterS, double forS, double byC) = BelowDewPoint(coat, film);
        ReviewFigures figures = new()
        {
            MarginC = margin.MarginC,
            MarginUncertaintyC = margin.UncertaintyC,
            WantedMarginC = wantedC,
            WaterAtSetGPerM2 = run.WaterAtSetGPerM2,
            PeakWaterGPerM2 = run.PeakWaterGPerM2,
            ToleranceGPerM2 = parameters.BlushToleranceGPerM2,
            TimeToSetS = run.TimeToSetS,
            ReferenceTimeToSetS = DryingRun.Simulate(Reference(coat).Conditions, Reference(coat).VapourPressurePa, parameters).TimeToSetS,
            LowestFilmTemperatureC = run.LowestFilmTemperatureC,
            BelowDewPointAfterS = afterS,
            BelowDewPointForS = forS,
            BelowDewPointByC = byC,
            MarginNegativeSince = since,
            LeastMomentMarginC = least,
            SolventTrappingRisk = run.SolventTrappingRisk,
        };
        DryingDelay? delay = coat.Outcome == CoatOutcome.Soft ? DryingDelay.Between(Here(coat, sprayed), Reference(coat), parameters, new TemperatureText(coat.Policy.TemperatureUnit)) : null;
        return new CoatReview
        {
            Landed = coat.Landing,
            Set = run.TimeToSetS is { } setS ? coat.Landing.AddSeconds(setS) : null,
            Outcome = coat.Outcome,
            Finding = finding,
            Headline = words.Headline(finding, figures, causes, remedies, delay),
            Story = words.Story(figures, air),
            Causes = causes,
            Remedies = remedies,
            Checks = ReviewChecks.For(coat.Outcome, finding),
            Figures = figures,
            Air = air,
            Film = film,
        };
    }

    // How much air a coat done otherwise could meet: far more than it takes to set, and no more than is run.
    private static TimeSpan Horizon(double openS, TimeSpan longest)
    {
        TimeSpan ample = TimeSpan.FromSeconds(4 * openS) + TimeSpan.FromMinutes(30);
        return ample < longest ? ample : longest;
    }

    private static CoatReview NotKnown(ReviewCase coat, string why) => new()
    {
        Landed = coat.Landing,
        Outcome = coat.Outcome,
        Finding = ReviewFinding.NotKnown,
        Headline = why,
        Air = [.. Around(coat).Select(moment => AirPoint(moment, null))],
    };

    private static CoatConditions ConditionsOf(ReviewCase coat, double pieceC) => new()
    {
        Mix = coat.Plan.Ladder.First(step => Math.Abs(step.RetarderPct - coat.RetarderPct) < 1e-6).Mix,
        WetFilmUm = coat.Plan.WetFilmUm,
        Substrate = coat.Plan.Substrate,
        AirSpeedMPerS = coat.Plan.AirSpeedMPerS,
        AirTemperatureC = pieceC,
        PressurePa = coat.PressurePa,
        PieceTemperatureC = pieceC,
    };

    private static DryingCase Here(ReviewCase coat, Replay sprayed)
    {
        AirStep landing = sprayed.Air.Landing;
        double vapourPa = AirCourse.VapourPressurePa(landing);
        return new DryingCase(sprayed.Conditions, vapourPa, 100 * vapourPa / Air.SaturationPressure.OverWater(landing.TemperatureC), coat.RetarderPct);
    }

    // The usual coat without retarder in the air that a schedule has in mind.
    private static DryingCase Reference(ReviewCase coat)
    {
        Air.MoistAir air = Air.MoistAir.FromRelativeHumidity(DryingDelay.ReferenceTemperatureC, DryingDelay.ReferenceHumidityPct, coat.PressurePa);
        CoatConditions conditions = new()
        {
            Mix = coat.Usual.Unretarded,
            WetFilmUm = coat.Usual.WetFilmUm,
            Substrate = coat.Plan.Substrate,
            AirSpeedMPerS = coat.Usual.AirSpeedMPerS,
            AirTemperatureC = air.TemperatureC,
            PressurePa = coat.PressurePa,
            PieceTemperatureC = air.TemperatureC,
        };
        return new DryingCase(conditions, air.VapourPressurePa, air.RelativeHumidityPct, 0);
    }

    private static ReviewFilmPoint FilmPoint(ReviewCase coat, AirCourse air, DryingPoint point)
    {
        AirStep step = air.At(point.TimeS);
        return new(coat.Landing.AddSeconds(point.TimeS), point.FilmTemperatureC, step.DewPointC, step.TemperatureC, point.WaterGPerM2);
    }

    private static IEnumerable<AirMoment> Around(ReviewCase coat) =>
        coat.Air.Moments.Where(moment => moment.End > coat.Landing - Before && moment.Time < coat.Landing + After);

    private static ReviewAirPoint AirPoint(AirMoment moment, double? blushLimitC) =>
        new(moment.Time, moment.TemperatureC, moment.DewPointC, moment.PieceTemperatureC, blushLimitC, moment.Verdict);

    private static IReadOnlyList<ReviewAirPoint> AirAround(ReviewCase coat, CoatConditions conditions, FilmParameters parameters)
    {
        BlushLimit limit = new(conditions, parameters);
        return [.. Around(coat).Select(moment => AirPoint(moment, moment.PieceTemperatureC is { } pieceC ? limit.At(moment.TemperatureC, pieceC) : null))];
    }

    private static (DateTimeOffset? Since, double LeastC) NegativeMargin(ReviewCase coat, IReadOnlyList<ReviewAirPoint> air, double openS)
    {
        AirMoment[] moments = [.. Around(coat)];
        int landed = Array.IndexOf(moments, coat.Air.At(coat.Landing));
        bool Follows(int at) => moments[at].Time - moments[at - 1].End <= RecordedAir.LongestBridge;
        double Margin(int at) => air[at].BlushLimitC - air[at].DewPointC ?? double.NaN;
        double leastC = double.PositiveInfinity;
        int? first = null;
        for (int i = landed; i < air.Count && (i == landed || air[i].Time < coat.Landing.AddSeconds(openS)); i++)
        {
            double marginC = Margin(i);
            leastC = Math.Min(leastC, double.IsNaN(marginC) ? leastC : marginC);
            first ??= marginC < 0 ? i : null;
        }

        while (first > 0 && Follows(first.Value) && Margin(first.Value - 1) < 0)
        {
            first--;
        }

        return (first is { } at ? air[at].Time : null, leastC);
    }

    private static (double? AfterS, double ForS, double ByC) BelowDewPoint(ReviewCase coat, IReadOnlyList<ReviewFilmPoint> film)
    {
        double? afterS = null;
        double forS = 0;
        double byC = 0;
        double Above(int at) => film[at].FilmTemperatureC - film[at].DewPointC;
        for (int i = 0; i < film.Count; i++)
        {
            double above = Above(i);
            byC = Math.Max(byC, -above);
            double before = i == 0 ? above : Above(i - 1);
            if (above >= 0 && before >= 0)
            {
                continue;
            }

            // On the straight line between two points: the share of it that lies below.
            double stepS = i == 0 ? 0 : (film[i].Time - film[i - 1].Time).TotalSeconds;
            double share = above < 0 && before < 0 ? 1 : Math.Min(above, before) / -Math.Abs(above - before);
            afterS ??= (film[i].Time - coat.Landing).TotalSeconds - (above < 0 ? share * stepS : stepS);
            forS += share * stepS;
        }

        return (afterS, forS, byC);
    }
}
