using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Tests.Film;

/// <summary>The heat side of the model against results from outside it.</summary>
public class HeatBalanceTests
{
    private static readonly Dictionary<string, string> NoSources = [];

    // DIPPR 101 coefficients, heat of vaporisation and heat capacity of water as in ChemSep and the CRC Handbook.
    private static readonly Solvent Water = new("water")
    {
        Name = "water",
        CasNumber = "7732-18-5",
        MolarMassKgPerMol = 0.018015,
        VapourPressure = VapourPressure.Dippr101(74.55502, -7295.586, -7.442448, 4.2881e-06, 2),
        CriticalTemperatureK = 647.1,
        HeatOfVaporisation25CJPerMol = 43980,
        LiquidDensityKgPerM3 = 998.2,
        LiquidHeatCapacityJPerMolK = 75.3,
        FullerVolumeCm3PerMol = 13.1,
        Sources = NoSources,
    };

    private static readonly Solvent Inert = Water with { VapourPressure = VapourPressure.Dippr101(-40, 0, 0, 0, 2) };

    [Fact]
    public void WaterFilm_InDryAirAt26Point7C_SettlesAtAshraeWetBulb()
    {
        // ASHRAE psychrometrics: dry air of 26.7 °C has a wet bulb of 9.05 °C. Without radiation and on foam, so that no heat comes from behind.
        CoatConditions wick = new()
        {
            Mix = new Mix([(Water, 1)], 0),
            WetFilmUm = 100,
            Substrate = new Substrate("foam", 0.05, 0.01, 1e4),
            AirSpeedMPerS = 3,
            AirTemperatureC = 26.7,
            PieceTemperatureC = 26.7,
        };
        DryingResult run = DryingRun.Simulate(wick, 0, new FilmParameters { Emissivity = 0, DryVolumeFraction = 0.3 });
        Assert.Equal(9.05, run.LowestFilmTemperatureC, 1.0);
    }

    [Theory]
    [InlineData(10, 12, 0.1)]
    [InlineData(100, 12, 0.1)]
    [InlineData(600, 12, 0.1)]
    [InlineData(10, 96, 0.03)]
    [InlineData(100, 96, 0.03)]
    [InlineData(600, 96, 0.03)]
    public void WarmAirOnColdThickWood_AgainstCarslawAndJaeger_WarmsAlike(double timeS, int cells, double toleranceC)
    {
        // Semi-infinite solid with surface convection (Carslaw and Jaeger, Conduction of Heat in Solids, section 2.7):
        // θ = 1 - exp(h² α t / k²) erfc(h √(α t) / k). A film of 1 µm that never evaporates adds nothing.
        CoatConditions cold = TestCoat.Conditions(new Mix([(Inert, 0.9)], 0.1), airC: 25, pieceC: 15, wetFilmUm: 1, substrate: "thick wood") with
        {
            LandingTemperatureC = 15,
        };
        FilmParameters parameters = new() { LongestRunS = timeS, SubstrateCells = cells };
        double surfaceC = DryingRun.Simulate(cold, 0, parameters).LastFilmTemperatureC;
        double h = AirSideTransfer.Convection(0.5, parameters.PieceLengthM, 25, cold.PressurePa) + AirSideTransfer.Radiation(parameters.Emissivity, 25);
        double x = h / 0.15 * Math.Sqrt(0.15 / 0.77e6 * timeS);
        double expected = 15 + (10 * (1 - (Math.Exp(x * x) * Erfc(x))));
        Assert.Equal(expected, surfaceC, toleranceC);
    }

    [Fact]
    public void Convection_AgainstFlatPlateExample_FollowsPohlhausen()
    {
        // Incropera and others: laminar flat plate, Re = 1e4 gives Nu = 0.664 * 100 * 0.707^(1/3) = 59.2 before the turbulence factor of 1.4;
        // at 27 °C and L = 0.3 m that is 0.53 m/s and h = 7.26 W/(m² K) of forced convection; free convection adds a little.
        Assert.InRange(AirSideTransfer.Convection(0.53, 0.3, 27, 101325), 7.26, 7.26 * 1.1);
    }

    [Fact]
    public void Radiation_AtTwentyC_IsFourEpsilonSigmaTCubed() =>
        Assert.Equal(5.143, AirSideTransfer.Radiation(0.9, 20), 0.002); // 4 · 0.9 · 5.670e-8 · 293.15³

    private static double Erfc(double x)
    {
        // Abramowitz and Stegun 7.1.26, error below 1.5e-7
        double t = 1 / (1 + (0.3275911 * x));
        double polynomial = t * (0.254829592 + (t * (-0.284496736 + (t * (1.421413741 + (t * (-1.453152027 + (t * 1.061405429))))))));
        return polynomial * Math.Exp(-x * x);
    }
}
