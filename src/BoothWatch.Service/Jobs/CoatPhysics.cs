using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Materials;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Jobs;

/// <summary>Turns a coat as marked, which names its materials by id, into what the film model takes.</summary>
/// <param name="options">The coat section: the shop's ladder and its usual cup.</param>
/// <param name="catalogue">The materials.</param>
public sealed class CoatPhysics(IOptions<CoatOptions> options, MaterialCatalogue catalogue)
{
    /// <summary>The plan of a coat, with its retarder level loaded; <paramref name="loaded"/> false: with none loaded, to ask for the recommended one.</summary>
    /// <exception cref="JobRuleException">A material is no longer in config/materials.</exception>
    public CoatPlan PlanOf(CoatDetails details, bool loaded = true)
    {
        ArgumentNullException.ThrowIfNull(details);
        Check("lacquer", details.Mix.Lacquer, catalogue.Lacquers);
        Check("thinner", details.Mix.Thinner, catalogue.Thinners);
        Check("retarder", details.Mix.Retarder, catalogue.Retarders);
        Check("substrate", details.Substrate, catalogue.Substrates);
        return CoatPlanner.Plan(
            options.Value with
            {
                Kind = details.Kind,
                Lacquer = details.Mix.Lacquer,
                LacquerParts = details.Mix.LacquerParts,
                Thinner = details.Mix.Thinner,
                ThinnerParts = details.Mix.ThinnerParts,
                Retarder = details.Mix.Retarder,
                LoadedRetarderPct = loaded ? details.Mix.RetarderPct : null,
                Substrate = details.Substrate,
                WetFilmUm = details.WetFilmUm,
                AirSpeedMPerS = details.AirSpeedMPerS,
            },
            catalogue);
    }

    /// <summary>The coat in an air, as a drying run takes it.</summary>
    /// <exception cref="JobRuleException">A material is no longer in config/materials.</exception>
    public DryingCase CaseOf(CoatDetails details, MoistAir air, double pieceTemperatureC)
    {
        ArgumentNullException.ThrowIfNull(details);
        ArgumentNullException.ThrowIfNull(air);
        CoatPlan plan = PlanOf(details);
        CoatConditions conditions = plan.ConditionsOf(
            plan.Ladder.First(step => step.RetarderPct == details.Mix.RetarderPct).Mix, air, pieceTemperatureC);
        return new DryingCase(conditions, air.VapourPressurePa, air.RelativeHumidityPct, details.Mix.RetarderPct);
    }

    /// <summary>The same kind of coat as a schedule has it in mind: usual wet film, no retarder, the reference air.</summary>
    /// <exception cref="JobRuleException">A material is no longer in config/materials.</exception>
    public DryingCase ReferenceOf(CoatDetails details, double pressurePa)
    {
        ArgumentNullException.ThrowIfNull(details);
        CoatDetails usual = details with
        {
            Mix = details.Mix with { RetarderPct = 0 },
            WetFilmUm = CoatHabits.For(details.Kind).WetFilmUm,
            AirSpeedMPerS = options.Value.AirSpeedMPerS,
        };
        MoistAir air = MoistAir.FromRelativeHumidity(DryingDelay.ReferenceTemperatureC, DryingDelay.ReferenceHumidityPct, pressurePa);
        return CaseOf(usual, air, DryingDelay.ReferenceTemperatureC);
    }

    private static void Check<T>(string field, string id, IReadOnlyDictionary<string, T> known)
    {
        if (!known.ContainsKey(id))
        {
            throw new JobRuleException(field, $"{field} is \"{id}\", which is not in config/materials; give one of {string.Join(", ", known.Keys.Order())}");
        }
    }
}
