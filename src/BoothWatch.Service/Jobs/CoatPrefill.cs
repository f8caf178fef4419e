using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service.Coat;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Jobs;

/// <summary>What the next coat of a job most likely is, so that one tap marks it.</summary>
/// <param name="schedules">The schedules.</param>
/// <param name="moments">The present air and the model's recommendation in it.</param>
/// <param name="options">The coat section.</param>
public sealed class CoatPrefill(ScheduleBook schedules, CoatMoments moments, IOptions<CoatOptions> options)
{
    /// <summary>
    /// The next coat: its kind by the schedule, its mix and film as last sprayed on this job, else as in the settings, with the retarder
    /// level that the model recommends now, else the one in the settings, else none.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="kind">Kind of coat; null: by the schedule.</param>
    /// <param name="start">When it begins, UTC.</param>
    /// <exception cref="JobRuleException">A material is no longer in config/materials.</exception>
    public CoatDetails Next(Job job, CoatKind? kind, DateTimeOffset start)
    {
        ArgumentNullException.ThrowIfNull(job);
        CoatOptions usual = options.Value;
        CoatKind next = kind ?? schedules.Of(job.Details)?.StepAt(job.Coats.Count + 1)?.Coat ?? job.LastCoat?.Details.Kind ?? usual.Kind;
        CoatDetails details = job.Coats.LastOrDefault(coat => coat.Details.Kind == next)?.Details ?? Usual(usual, next);
        details = details with { Start = start, Stop = null, Mix = details.Mix with { RetarderPct = 0 } };
        double? recommended = moments.Of(details, start)?.RecommendedRetarderPct;
        return details with { Mix = details.Mix with { RetarderPct = recommended ?? usual.LoadedRetarderPct ?? 0 } };
    }

    /// <summary>What the shop usually sprays as a kind: by its settings where they are about that kind, else by habit.</summary>
    internal static CoatDetails Usual(CoatOptions usual, CoatKind kind)
    {
        // What the settings say of one kind of coat is no word about another.
        CoatHabits habits = CoatHabits.For(kind);
        bool same = usual.Kind == kind;
        return new CoatDetails
        {
            Kind = kind,
            Mix = new CoatMix(
                (same ? usual.Lacquer : null) ?? habits.Lacquer,
                (same ? usual.LacquerParts : null) ?? habits.LacquerParts,
                usual.Thinner,
                (same ? usual.ThinnerParts : null) ?? habits.ThinnerParts,
                usual.Retarder,
                0),
            WetFilmUm = (same ? usual.WetFilmUm : null) ?? habits.WetFilmUm,
            Substrate = usual.Substrate,
            AirSpeedMPerS = usual.AirSpeedMPerS,
            Start = default,
        };
    }
}
