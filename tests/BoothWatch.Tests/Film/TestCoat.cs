using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Service.Materials;
using BoothWatch.Solvents;

namespace BoothWatch.Tests.Film;

/// <summary>The shipped materials and the coats that the film tests spray with them.</summary>
internal static class TestCoat
{
    public static readonly MaterialCatalogue Materials = MaterialsLoader.Load(Path.Combine(AppContext.BaseDirectory, "config", "materials"));

    public static readonly Lacquer Lacquer = Materials.Lacquers["nitrocellulose lacquer"];

    public static readonly Retarder Retarder = Materials.Retarders["2-butoxyethanol"];

    public static Mix Unthinned => Lacquer.Mix;

    public static Mix Thinned(string thinner, double parts = 1) => LadderBuilder.Thin(Lacquer, 1, Materials.Thinners[thinner], parts);

    public static Mix Retarded(Mix mix, double levelPct, string retarder = "2-butoxyethanol") =>
        LadderBuilder.Build(mix, Materials.Retarders[retarder], [levelPct])[0].Mix;

    /// <summary>8 % by mass of cellulose nitrate (1.62 g/mL) in one solvent: the solution of the trade's blush-resistance test.</summary>
    public static Mix NitrateIn(string solvent)
    {
        Solvent found = Materials.Solvents[solvent];
        double polymer = 8 / 1.62;
        double liquid = 92 / (found.LiquidDensityKgPerM3 / 1000);
        double share = polymer / (polymer + liquid);
        return new Mix([(found, 1 - share)], share);
    }

    public static CoatConditions Conditions(
        Mix? mix = null, double airC = 25, double? pieceC = null, double wetFilmUm = 75, string substrate = "wood", double airSpeed = 0.5) => new()
        {
            Mix = mix ?? Unthinned,
            WetFilmUm = wetFilmUm,
            Substrate = Materials.Substrates[substrate],
            AirSpeedMPerS = airSpeed,
            AirTemperatureC = airC,
            PieceTemperatureC = pieceC ?? airC,
        };

    public static CoatPlan Plan(Mix? mix = null, double? loadedPct = null, IReadOnlyList<double>? levelsPct = null) => new()
    {
        Description = "clear coat",
        CupMl = 200,
        Kind = CoatKind.Clear,
        Ladder = LadderBuilder.Build(mix ?? Thinned("ordinary thinner"), Retarder, levelsPct ?? LadderBuilder.DefaultLevelsPct),
        LoadedRetarderPct = loadedPct,
        WetFilmUm = 75,
        Substrate = Materials.Substrates["wood"],
        AirSpeedMPerS = 0.5,
    };

    public static double VapourPressurePa(double airC, double humidityPct) => humidityPct / 100 * SaturationPressure.OverWater(airC);

    public static double CriticalPct(CoatConditions conditions, FilmParameters? parameters = null) =>
        CriticalHumidity.Find(conditions, parameters).RelativeHumidityPct;

    /// <summary>Time in which 90 % by volume of a neat solvent leaves thin filter paper in dry air of 25 °C at 1 m/s, s.</summary>
    public static double NinetyPercentS(string solvent)
    {
        CoatConditions paper = new()
        {
            Mix = new Mix([(Materials.Solvents[solvent], 1)], 0),
            WetFilmUm = 110,
            Substrate = new Substrate("filter paper", 0.0002, 0.1, 0.5e6),
            AirSpeedMPerS = 1,
            AirTemperatureC = 25,
            PieceTemperatureC = 25,
        };
        FilmParameters ninetyPercent = new() { DryVolumeFraction = 0.1, LongestRunS = 200_000 };
        return DryingRun.Simulate(paper, 0, ninetyPercent).TimeToSetS!.Value;
    }

    /// <summary>Critical humidity of 8 % cellulose nitrate in one solvent at 26.7 °C, 200 µm wet on a glass plate, %.</summary>
    public static double BlushResistancePct(string solvent, double plateThicknessM = 0.001) => CriticalPct(
        Conditions(NitrateIn(solvent), airC: 26.7, wetFilmUm: 200) with { Substrate = new Substrate("glass plate", plateThicknessM, 1.0, 2.1e6) });
}
