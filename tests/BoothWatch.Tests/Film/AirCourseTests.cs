using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Tests.Film;

/// <summary>Drying in air that changes.</summary>
public class AirCourseTests
{
    private static readonly CoatConditions Coat = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Unthinned, 5));

    [Theory]
    [InlineData(18, 21)]
    [InlineData(21, 21)]
    [InlineData(24, 18)]
    public void Run_InAirThatDoesNotChange_EqualsTheRunInConstantAir(double dewPointC, double pieceC)
    {
        CoatConditions coat = Coat with { PieceTemperatureC = pieceC };
        DryingResult constant = DryingRun.Simulate(coat, SaturationPressure.OverWater(dewPointC));
        DryingResult one = DryingRun.Simulate(coat, AirCourse.Constant(25, dewPointC));
        DryingResult many = DryingRun.Simulate(coat, new AirCourse([.. Enumerable.Range(0, 60).Select(i => new AirStep(i * 15, 25, dewPointC))]));

        Assert.Equal(constant.TimeToSetS!.Value, one.TimeToSetS!.Value, 1e-6);
        Assert.Equal(constant.WaterAtSetGPerM2, one.WaterAtSetGPerM2, 1e-9);

        // Cut into steps of 15 s it may differ by the tolerance of the solver only.
        Assert.InRange(many.TimeToSetS!.Value / constant.TimeToSetS.Value, 0.998, 1.002);
        Assert.Equal(constant.WaterAtSetGPerM2, many.WaterAtSetGPerM2, 0.003);
        Assert.Equal(constant.LowestFilmTemperatureC, many.LowestFilmTemperatureC, 0.02);
    }

    [Fact]
    public void Run_WithAirThatChangesAfterSet_IsTheSameAsWithout()
    {
        DryingResult constant = DryingRun.Simulate(Coat, AirCourse.Constant(25, 20));
        AirCourse later = new([new AirStep(0, 25, 20), new AirStep(constant.TimeToSetS!.Value + 60, 10, 10)]);
        Assert.Equal(constant.WaterAtSetGPerM2, DryingRun.Simulate(Coat, later).WaterAtSetGPerM2, 0.001);
    }

    [Fact]
    public void Run_WithDampAirArriving_TakesUpWaterOnlyFromThen()
    {
        AirCourse course = new([new AirStep(0, 25, 5), new AirStep(60, 25, 24)]);
        DryingResult run = DryingRun.Simulate(Coat, course, keepTrajectory: true);
        Assert.All(run.Trajectory.Where(point => point.TimeS <= 60), point => Assert.InRange(point.WaterGPerM2, 0, 1e-3));
        Assert.True(run.PeakWaterGPerM2 > 0.1, $"{run.PeakWaterGPerM2} g/m²");
    }

    [Fact]
    public void Piece_InAirThatWarmsInAStep_FollowsCarslawAndJaegerTwice()
    {
        // Semi-infinite solid with surface convection (Carslaw and Jaeger, Conduction of Heat in Solids, section 2.7), superposed: heat
        // conduction is linear, so a step of the air at 300 s adds the same answer again, 300 s later. A film that never evaporates adds nothing.
        Solvent inert = TestCoat.Materials.Solvents["toluene"] with { VapourPressure = VapourPressure.Dippr101(-40, 0, 0, 0, 2) };
        CoatConditions cold = TestCoat.Conditions(new Mix([(inert, 0.9)], 0.1), airC: 20, pieceC: 15, wetFilmUm: 1, substrate: "thick wood") with
        {
            LandingTemperatureC = 15,
        };
        FilmParameters parameters = new() { LongestRunS = 900, SubstrateCells = 96 };
        double surfaceC = DryingRun.Simulate(cold, new AirCourse([new AirStep(0, 20, -50), new AirStep(300, 28, -50)]), parameters).LastFilmTemperatureC;
        double expected = 15 + (5 * Response(900, 20)) + (8 * Response(600, 28));
        Assert.Equal(expected, surfaceC, 0.1);

        double Response(double timeS, double airC)
        {
            double h = AirSideTransfer.Convection(0.5, parameters.PieceLengthM, airC, cold.PressurePa) + AirSideTransfer.Radiation(parameters.Emissivity, airC);
            double x = h / 0.15 * Math.Sqrt(0.15 / 0.77e6 * timeS);
            return 1 - (Math.Exp(x * x) * Erfc(x));
        }
    }

    [Fact]
    public void Water_TakenUpInChangingAir_IsWhatLewisAnalogyLetsThrough()
    {
        // Chilton and Colburn's analogy: water crosses at F_w (p_air - p_sat(film)). The outflow of solvents holds back a few percent of it.
        AirCourse course = new([new AirStep(0, 25, 20), new AirStep(30, 25, 22), new AirStep(75, 24, 22.5)]);
        DryingResult run = DryingRun.Simulate(Coat, course, new FilmParameters { Tolerance = 1e-5 }, keepTrajectory: true);
        double convection = AirSideTransfer.Convection(0.5, 0.1, 25, Coat.PressurePa);
        double conductance = AirSideTransfer.MassConductance(
            convection, FullerDiffusivity.InAirM2PerS(0.018015, 13.1, 25, Coat.PressurePa), 25, Coat.PressurePa);
        double moles = 0;
        DryingPoint peak = run.Trajectory.MaxBy(point => point.WaterGPerM2)!;
        foreach ((DryingPoint a, DryingPoint b) in run.Trajectory.Zip(run.Trajectory.Skip(1)).TakeWhile(pair => pair.Second.TimeS <= peak.TimeS))
        {
            double middleC = (a.FilmTemperatureC + b.FilmTemperatureC) / 2;
            double dewPointC = course.At((a.TimeS + b.TimeS) / 2).DewPointC;
            moles += conductance * Math.Max(0, SaturationPressure.OverWater(dewPointC) - SaturationPressure.OverWater(middleC)) * (b.TimeS - a.TimeS);
        }

        Assert.InRange(peak.WaterGPerM2 / (moles * 18.015), 0.85, 1.01);
    }

    [Theory]
    [InlineData(new double[] { }, "no step at 0 s")]
    [InlineData(new double[] { 5 }, "no step at 0 s")]
    [InlineData(new double[] { 0, 60, 60 }, "rising")]
    [InlineData(new double[] { 0, double.NaN }, "rising")]
    public void Course_ThatIsNone_IsRefused(double[] timesS, string says) => Assert.Contains(
        says,
        Assert.Throws<ArgumentException>(() => new AirCourse([.. timesS.Select(time => new AirStep(time, 21, 10))])).Message,
        StringComparison.Ordinal);

    [Fact]
    public void Run_WithAnImpossibleStep_IsRefused() => Assert.Contains(
        "air temperature is 95",
        Assert.Throws<ArgumentException>(() => DryingRun.Simulate(Coat, new AirCourse([new AirStep(0, 25, 20), new AirStep(60, 95, 20)]))).Message,
        StringComparison.Ordinal);

    private static double Erfc(double x)
    {
        // Abramowitz and Stegun 7.1.26, error below 1.5e-7
        double t = 1 / (1 + (0.3275911 * x));
        double polynomial = t * (0.254829592 + (t * (-0.284496736 + (t * (1.421413741 + (t * (-1.453152027 + (t * 1.061405429))))))));
        return polynomial * Math.Exp(-x * x);
    }
}
