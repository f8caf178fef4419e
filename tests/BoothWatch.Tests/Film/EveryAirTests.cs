using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Solvents;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Film;

/// <summary>Any air of a shop, any shipped material: every run ends, finite, within its physical bounds.</summary>
public class EveryAirTests
{
    public static TheoryData<string> EverySolvent => [.. TestCoat.Materials.Solvents.Values.Select(solvent => solvent.Id).Distinct()];

    [Theory]
    [MemberData(nameof(EverySolvent))]
    public void NeatSolvent_InEveryAir_Converges(string solvent)
    {
        Mix mix = new([(TestCoat.Materials.Solvents[solvent], 0.9)], 0.1);
        foreach (double airC in (double[])[-5, 10, 25, 45])
        {
            foreach (double humidityPct in (double[])[1, 50, 90, 100])
            {
                DryingResult run = DryingRun.Simulate(TestCoat.Conditions(mix, airC, airC - 3), TestCoat.VapourPressurePa(airC, humidityPct));
                AssertSane(run, airC, airC - 3);
            }
        }
    }

    [Property(MaxTest = 150)]
    public Property AnyMix_InAnyAir_ConvergesAndStaysFinite()
    {
        Gen<(double AirC, double Pct, double PieceC, double Film, double Speed, int A, int B, double Level)> coats =
            from airC in Gen.Choose(-50, 450)
            from pct in Gen.Choose(10, 1000)
            from pieceOffset in Gen.Choose(-100, 100)
            from film in Gen.Choose(10, 300)
            from speed in Gen.Choose(0, 30)
            from a in Gen.Choose(0, 1000)
            from b in Gen.Choose(0, 1000)
            from level in Gen.Choose(0, 30)
            select (airC / 10.0, pct / 10.0, (airC + pieceOffset) / 10.0, (double)film, speed / 10.0, a, b, (double)level);
        return Prop.ForAll(Arb.From(coats), coat =>
        {
            Lacquer lacquer = Pick(TestCoat.Materials.Lacquers.Values, coat.A);
            Thinner thinner = Pick(TestCoat.Materials.Thinners.Values, coat.B);
            Retarder retarder = Pick(TestCoat.Materials.Retarders.Values, coat.A + coat.B);
            Substrate substrate = Pick(TestCoat.Materials.Substrates.Values, coat.B);
            Mix mix = LadderBuilder.Build(LadderBuilder.Thin(lacquer, 1, thinner, coat.A % 5), retarder, [coat.Level])[0].Mix;
            CoatConditions conditions = TestCoat.Conditions(mix, coat.AirC, coat.PieceC, coat.Film, substrate.Id, coat.Speed);
            AssertSane(DryingRun.Simulate(conditions, TestCoat.VapourPressurePa(coat.AirC, coat.Pct)), coat.AirC, coat.PieceC);
            CriticalPoint critical = CriticalHumidity.Find(conditions);
            Assert.InRange(critical.RelativeHumidityPct, 0.1, 100);
            Assert.True(critical.DewPointC <= Math.Min(coat.AirC, coat.PieceC) + 1e-9);
        });
    }

    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(35)]
    public void CriticalHumidity_OnEitherSide_SeparatesBlushFromNone(double airC)
    {
        CoatConditions coat = TestCoat.Conditions(TestCoat.Thinned("ordinary thinner"), airC);
        double critical = CriticalHumidity.Find(coat).DewPointC;
        double Water(double dewPointC) => DryingRun.Simulate(coat, SaturationPressure.OverWater(dewPointC)).WaterAtSetGPerM2;
        Assert.InRange(Water(critical - 0.02), 0, FilmParameters.Default.BlushToleranceGPerM2);
        Assert.InRange(Water(critical + 0.02), FilmParameters.Default.BlushToleranceGPerM2, 5);
    }

    [Fact]
    public void WaterAtSet_WithRisingHumidity_NeverFalls()
    {
        CoatConditions coat = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Thinned("ordinary thinner"), 5));
        double previous = 0;
        for (double pct = 5; pct <= 100; pct += 5)
        {
            double water = DryingRun.Simulate(coat, TestCoat.VapourPressurePa(25, pct)).WaterAtSetGPerM2;
            Assert.True(water >= previous - 1e-6, $"{pct} %: {water} after {previous} g/m²");
            previous = water;
        }
    }

    [Fact]
    public void PieceBelowDewPoint_InMoistAir_IsLimitedByDew()
    {
        CriticalPoint critical = CriticalHumidity.Find(TestCoat.Conditions(TestCoat.NitrateIn("2-butoxyethanol"), airC: 25, pieceC: 12));
        Assert.Equal(CriticalLimit.Dew, critical.Limit);
        Assert.Equal(12, critical.DewPointC, 1e-9);
    }

    [Fact]
    public void WarmThickPiece_InSaturatedAir_KeepsTheFilmFromBlushing()
    {
        CriticalPoint critical = CriticalHumidity.Find(TestCoat.Conditions(airC: 20, pieceC: 38, substrate: "thick wood"));
        Assert.Equal(CriticalLimit.Saturation, critical.Limit);
        Assert.Equal(100, critical.RelativeHumidityPct);
    }

    [Theory]
    [InlineData(double.NaN, 20, 75, "air temperature is NaN")]
    [InlineData(99, 20, 75, "air temperature is 99")]
    [InlineData(20, -40, 75, "piece temperature is -40")]
    [InlineData(20, 20, 0, "wet film is 0")]
    public void Simulate_OutOfRange_NamesTheCondition(double airC, double pieceC, double wetFilmUm, string expected)
    {
        ArgumentException error = Assert.Throws<ArgumentException>(
            () => DryingRun.Simulate(TestCoat.Conditions(airC: airC, pieceC: pieceC, wetFilmUm: wetFilmUm), 1000));
        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Solver_WhenNothingIsFinite_FailsLoudlyAndNamesItself()
    {
        Solvent broken = TestCoat.Materials.Solvents["acetone"] with { VapourPressure = VapourPressure.Dippr101(double.NaN, 0, 0, 0, 2) };
        DryingFailedException error = Assert.Throws<DryingFailedException>(
            () => DryingRun.Simulate(TestCoat.Conditions(new Mix([(broken, 0.9)], 0.1)), 1000));
        Assert.Contains("Rosenbrock", error.Message, StringComparison.Ordinal);
    }

    private static void AssertSane(DryingResult run, double airC, double pieceC)
    {
        Assert.InRange(run.LowestFilmTemperatureC, -60, airC + 1e-6);
        Assert.InRange(run.WaterAtSetGPerM2, 0, 500);
        Assert.InRange(run.PeakWaterGPerM2, run.WaterAtSetGPerM2 - 1e-6, 500);
        Assert.InRange(run.LastFilmTemperatureC, run.LowestFilmTemperatureC - 1e-6, Math.Max(airC, pieceC) + 5);
        Assert.True(run.TimeToSetS is null or > 0);
    }

    private static T Pick<T>(IEnumerable<T> from, int index) => from.ElementAt(index % from.Count());
}
