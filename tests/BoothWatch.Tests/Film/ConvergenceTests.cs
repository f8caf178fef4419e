using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Tests.Film;

public class ConvergenceTests
{
    public static TheoryData<double, double, string, double, string> Coats => new()
    {
        { 10, 75, "ordinary thinner", 0, "wood" },
        { 25, 75, "ordinary thinner", 8, "wood" },
        { 25, 40, "fast thinner", 0, "thick wood" },
        { 25, 40, "fast thinner", 12, "glass" },
        { 35, 120, "slow thinner", 5, "steel panel" },
    };

    [Theory]
    [MemberData(nameof(Coats))]
    public void CriticalHumidity_WithHalvedTolerance_ChangesLessThanThreeTenths(double airC, double wetFilmUm, string thinner, double levelPct, string substrate)
    {
        CoatConditions coat = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Thinned(thinner, 2), levelPct), airC, null, wetFilmUm, substrate);
        double normal = TestCoat.CriticalPct(coat);
        Assert.Equal(normal, TestCoat.CriticalPct(coat, new FilmParameters { Tolerance = FilmParameters.Default.Tolerance / 2 }), 0.3);
        Assert.Equal(normal, TestCoat.CriticalPct(coat, new FilmParameters { Tolerance = FilmParameters.Default.Tolerance / 1000 }), 0.3);
    }

    [Theory]
    [MemberData(nameof(Coats))]
    public void CriticalHumidity_WithSubstrateGridFourTimesFiner_ChangesLessThanThreeTenths(double airC, double wetFilmUm, string thinner, double levelPct, string substrate)
    {
        CoatConditions coat = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Thinned(thinner, 2), levelPct), airC, null, wetFilmUm, substrate);
        double finer = TestCoat.CriticalPct(coat, new FilmParameters { SubstrateCells = 4 * FilmParameters.Default.SubstrateCells });
        Assert.Equal(TestCoat.CriticalPct(coat), finer, 0.3);
    }

    [Theory]
    [MemberData(nameof(Coats))]
    public void CriticalHumidity_WithWaterSmoothingHalved_ChangesLessThanThreeTenths(double airC, double wetFilmUm, string thinner, double levelPct, string substrate)
    {
        CoatConditions coat = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Thinned(thinner, 2), levelPct), airC, null, wetFilmUm, substrate);
        double sharper = TestCoat.CriticalPct(coat, new FilmParameters { WaterSmoothingGPerM2 = FilmParameters.Default.WaterSmoothingGPerM2 / 2 });
        Assert.Equal(TestCoat.CriticalPct(coat), sharper, 0.3);
    }

    [Fact]
    public void Solver_WithTighterTolerance_ApproachesTheSameRunAtItsOrder()
    {
        // A Rosenbrock method with a third-order estimate: ten thousand times tighter must gain far more than a hundredfold.
        CoatConditions coat = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Thinned("ordinary thinner"), 5));
        double vapour = TestCoat.VapourPressurePa(25, 84);
        double SetS(double tolerance) => DryingRun.Simulate(coat, vapour, new FilmParameters { Tolerance = tolerance }).TimeToSetS!.Value;
        double exact = SetS(1e-10);
        double coarse = Math.Abs(SetS(1e-3) - exact);
        double fine = Math.Abs(SetS(1e-7) - exact);
        Assert.InRange(coarse / exact, 0, 2e-3);
        Assert.InRange(fine / exact, 0, 2e-6);
    }

    [Fact]
    public void Jacobian_AgainstDifferences_Agrees()
    {
        Mix mix = TestCoat.Retarded(TestCoat.Thinned("fast thinner"), 5);
        DryingFilm film = new(TestCoat.Conditions(mix), TestCoat.VapourPressurePa(25, 80), FilmParameters.Default);
        double[] state = new double[film.Size];
        film.Initial(state, 288, 292);
        state[0] *= 0.4;
        state[film.WaterIndex] = DryingFilm.GramsToMoles(0.003);
        double[] rate = new double[film.Size];
        double[] core = new double[film.CoreSize * film.CoreSize];
        film.Evaluate(state, rate);
        film.Jacobian(core);
        double[] up = new double[film.Size];
        double[] down = new double[film.Size];
        for (int j = 0; j < film.CoreSize; j++)
        {
            double kept = state[j];
            double step = 1e-6 * Math.Max(Math.Abs(kept), 1e-3);
            state[j] = kept + step;
            film.Evaluate(state, up);
            state[j] = kept - step;
            film.Evaluate(state, down);
            state[j] = kept;
            for (int i = 0; i < film.CoreSize; i++)
            {
                double difference = (up[i] - down[i]) / (2 * step);
                double analytic = core[(i * film.CoreSize) + j];
                double scale = Math.Abs(difference) + (1e-9 * Math.Abs(rate[i]) / step);
                Assert.True(Math.Abs(analytic - difference) <= 1e-5 * scale + 1e-12, $"row {i}, column {j}: analytic {analytic}, difference {difference}");
            }
        }
    }
}
