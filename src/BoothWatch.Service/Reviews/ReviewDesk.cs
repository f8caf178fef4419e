using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Reviews;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Jobs;
using BoothWatch.Solvents;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Reviews;

/// <summary>
/// Reviews coats and keeps the newest few reviews: a review stays right until its coat is corrected, its outcome is said
/// anew or its air grows. Not safe for several threads: a review takes
/// long, and whoever waits for another must not hold a thread meanwhile.
/// </summary>
/// <param name="journal">The recorded air.</param>
/// <param name="physics">The coat for the model.</param>
/// <param name="coats">What the shop usually sprays.</param>
/// <param name="booth">Height of the booth.</param>
/// <param name="policy">The shop's limits that hold now.</param>
/// <param name="time">The shop's time zone.</param>
public sealed class ReviewDesk(
    ReviewAirQuery journal, CoatPhysics physics, IOptions<CoatOptions> coats, IOptions<BoothOptions> booth, PolicyInForce policy, TimeProvider time)
{
    private const int MostKept = 16;

    /// <summary>The longest that a film is followed.</summary>
    private static readonly TimeSpan LongestRun = TimeSpan.FromSeconds(FilmParameters.Default.LongestRunS);

    private readonly Dictionary<long, Kept> _kept = [];

    private sealed record Kept(CoatDetails Details, CoatOutcome? Outcome, VerdictPolicy Policy, (long Minutes, long Assessments) Extent, CoatReview Review, long At);

    /// <summary>The review of a coat.</summary>
    /// <param name="coat">The coat.</param>
    /// <exception cref="JobRuleException">A material is no longer in config/materials.</exception>
    /// <exception cref="Outputs.Series.JournalException">The journal cannot be read.</exception>
    public CoatReview Of(JobCoat coat)
    {
        ArgumentNullException.ThrowIfNull(coat);
        (DateTimeOffset from, DateTimeOffset to) = SpanOf(coat.Details.Start);
        (long Minutes, long Assessments) extent = journal.Extent(from, to);
        if (_kept.TryGetValue(coat.Id, out Kept? kept)
            && kept.Details == coat.Details && kept.Outcome == coat.Outcome && kept.Policy == policy.Current && kept.Extent == extent)
        {
            return kept.Review;
        }

        CoatReview review = CoatReviewer.Review(CaseOf(coat, journal.Of(from, to, coat.Details.Start)));
        if (_kept.Count >= MostKept)
        {
            _kept.Remove(_kept.MinBy(entry => entry.Value.At).Key);
        }

        _kept[coat.Id] = new Kept(coat.Details, coat.Outcome, policy.Current, extent, review, time.GetTimestamp());
        return review;
    }

    /// <summary>The case of a coat in an air.</summary>
    internal ReviewCase CaseOf(JobCoat coat, RecordedAir air)
    {
        CoatDetails details = coat.Details;
        CoatDetails usual = CoatPrefill.Usual(coats.Value, details.Kind);
        usual = usual with
        {
            Mix = usual.Mix with { Lacquer = details.Mix.Lacquer, Retarder = details.Mix.Retarder, RetarderPct = details.Mix.RetarderPct },
            Substrate = details.Substrate,
        };
        IReadOnlyList<(double RetarderPct, Mix Mix)> ladder = physics.PlanOf(usual).Ladder;
        return new ReviewCase
        {
            Details = details,
            Outcome = coat.Outcome,
            Plan = physics.PlanOf(details),
            Usual = new UsualCoat(usual.Mix, ladder.First(step => step.RetarderPct == details.Mix.RetarderPct).Mix, ladder[0].Mix, usual.WetFilmUm, usual.AirSpeedMPerS),
            RecommendedRetarderPct = coat.Moment?.RecommendedRetarderPct,
            Air = air,
            PressurePa = coat.Moment?.PressurePa ?? StationPressure.AtAltitude(booth.Value.AltitudeM),
            AirUncertainty = new AirUncertainty(CoatMoments.PastUncertainty.TemperatureC, CoatMoments.PastUncertainty.HumidityPct),
            PieceUncertaintyC = CoatMoments.PastUncertainty.PieceC,
            Policy = policy.Current,
            Zone = time.LocalTimeZone,
        };
    }

    // The day of the coat, and as far as it could take to set.
    private (DateTimeOffset From, DateTimeOffset To) SpanOf(DateTimeOffset landing)
    {
        DateTime day = TimeZoneInfo.ConvertTime(landing, time.LocalTimeZone).Date;
        DateTimeOffset begin = Midnight(day);
        DateTimeOffset end = Midnight(day.AddDays(1));
        DateTimeOffset earliest = landing - CoatReviewer.Before;
        DateTimeOffset latest = landing + LongestRun;
        return (begin < earliest ? begin : earliest, end > latest ? end : latest);
    }

    private DateTimeOffset Midnight(DateTime day) => new DateTimeOffset(day, time.LocalTimeZone.GetUtcOffset(day)).ToUniversalTime();
}
