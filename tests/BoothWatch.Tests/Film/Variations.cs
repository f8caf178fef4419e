using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Tests.Film;

/// <summary>The assumptions of the film model, varied one at a time over the ranges that docs/method.md states.</summary>
internal static class Variations
{
    /// <summary>Name, and the change to parameters and coat. Two opposite changes of one quantity stand together.</summary>
    public static readonly (string Name, Func<FilmParameters, FilmParameters> Parameters, Func<CoatConditions, CoatConditions> Coat)[] All =
    [
        ("chi 0.3", p => p with { Chi = 0.3 }, c => c),
        ("chi 0.5", p => p with { Chi = 0.5 }, c => c),
        ("set at 0.4", p => p with { SetPolymerFraction = 0.4 }, c => c),
        ("set at 0.6", p => p with { SetPolymerFraction = 0.6 }, c => c),
        ("tolerance 0.03 g/m²", p => p with { BlushToleranceGPerM2 = 0.03 }, c => c),
        ("tolerance 0.3 g/m²", p => p with { BlushToleranceGPerM2 = 0.3 }, c => c),
        ("convection 30 % less", p => p with { ConvectionFactor = 0.7 }, c => c),
        ("convection 40 % more", p => p with { ConvectionFactor = 1.4 }, c => c),
        ("emissivity 0.8", p => p with { Emissivity = 0.8 }, c => c),
        ("emissivity 1.0", p => p with { Emissivity = 1 }, c => c),
        ("wet film 15 % thinner", p => p, c => c with { WetFilmUm = c.WetFilmUm * 0.85 }),
        ("wet film 15 % heavier", p => p, c => c with { WetFilmUm = c.WetFilmUm * 1.15 }),
        ("wood 20 % lighter", p => p, c => c with { Substrate = Heavier(c.Substrate, 0.8) }),
        ("wood 20 % heavier", p => p, c => c with { Substrate = Heavier(c.Substrate, 1.2) }),
        ("lacquer lands 10 °C colder", p => p, c => c with { LandingTemperatureC = c.AirTemperatureC - 10 }),
        ("pressure 5 kPa lower", p => p, c => c with { PressurePa = c.PressurePa - 5000 }),
    ];

    /// <summary>Change of the critical dew point by one variation, °C.</summary>
    public static double ChangeC(int variation, Mix mix, double wetFilmUm, double airC)
    {
        CoatConditions coat = TestCoat.Conditions(mix, airC, wetFilmUm: wetFilmUm);
        (_, Func<FilmParameters, FilmParameters> parameters, Func<CoatConditions, CoatConditions> change) = All[variation];
        return CriticalHumidity.Find(change(coat), parameters(FilmParameters.Default)).DewPointC - CriticalHumidity.Find(coat).DewPointC;
    }

    private static Substrate Heavier(Substrate substrate, double factor) =>
        substrate with { VolumetricHeatCapacityJPerM3K = factor * substrate.VolumetricHeatCapacityJPerM3K };
}
