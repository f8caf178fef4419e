using System.Globalization;
using BoothWatch.Film;
using BoothWatch.Service.Materials;
using BoothWatch.Solvents;

namespace BoothWatch.Service.Coat;

/// <summary>Turns the coat section and the materials into the plan that the film model is asked about.</summary>
public static class CoatPlanner
{
    /// <summary>The plan for lacquer and thinner by parts.</summary>
    /// <exception cref="KeyNotFoundException">An id is not in the catalogue; the options were not validated.</exception>
    public static CoatPlan Plan(CoatOptions options, MaterialCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(catalogue);
        CoatHabits habits = CoatHabits.For(options.Kind);
        Lacquer lacquer = catalogue.Lacquers[options.Lacquer ?? habits.Lacquer];
        Thinner thinner = catalogue.Thinners[options.Thinner];
        double lacquerParts = options.LacquerParts ?? habits.LacquerParts;
        double thinnerParts = options.ThinnerParts ?? habits.ThinnerParts;
        string cup = thinnerParts > 0
            ? string.Create(CultureInfo.InvariantCulture, $"{Parts(lacquerParts)} {lacquer.Id} to {Parts(thinnerParts)} {thinner.Id}")
            : $"{lacquer.Id}, unthinned";
        return Plan(options, catalogue, LadderBuilder.Thin(lacquer, lacquerParts, thinner, thinnerParts), cup, catalogue.Substrates[options.Substrate]);
    }

    /// <summary>The plan for any unretarded mix on any substrate.</summary>
    /// <param name="options">All else of the coat.</param>
    /// <param name="catalogue">The materials.</param>
    /// <param name="unretarded">What is in the cup before retarder.</param>
    /// <param name="cup">What that is, for people.</param>
    /// <param name="substrate">What the film lies on.</param>
    public static CoatPlan Plan(CoatOptions options, MaterialCatalogue catalogue, Mix unretarded, string cup, Substrate substrate)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(catalogue);
        Retarder retarder = catalogue.Retarders[options.Retarder];
        return new CoatPlan
        {
            Description = $"{cup}; retarder {retarder.Id}",
            CupMl = options.CupMl,
            Kind = options.Kind,
            Ladder = LadderBuilder.Build(unretarded, retarder, Levels(options, retarder)),
            LoadedRetarderPct = options.LoadedRetarderPct,
            WetFilmUm = options.WetFilmUm ?? CoatHabits.For(options.Kind).WetFilmUm,
            Substrate = substrate,
            PieceThicknessM = options.PieceThicknessMm / 1000,
            AirSpeedMPerS = options.AirSpeedMPerS,
        };
    }

    /// <summary>The levels of the ladder: 0 to the highest by the step, and the level in the cup where that is another one.</summary>
    private static double[] Levels(CoatOptions options, Retarder retarder)
    {
        double highest = options.RetarderHighestPct ?? retarder.HighestLevelPct;
        int steps = (int)Math.Floor((highest / options.RetarderStepPct) + 1e-9);
        IEnumerable<double> levels = Enumerable.Range(0, steps + 1).Select(step => step * options.RetarderStepPct);
        return [.. (options.LoadedRetarderPct is { } loaded ? levels.Append(loaded) : levels).Distinct().Order()];
    }

    private static string Parts(double parts) =>
        string.Create(CultureInfo.InvariantCulture, $"{parts:0.##} {(parts == 1 ? "part" : "parts")}");
}
