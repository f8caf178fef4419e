using BoothWatch.Film;

namespace BoothWatch.Tests.Film;

public class DryingRunTests
{
    private static readonly CoatConditions Coat = TestCoat.Conditions(TestCoat.Retarded(TestCoat.Thinned("ordinary thinner"), 5));

    [Fact]
    public void Trajectory_WhenKept_RunsFromLandingToSet()
    {
        DryingResult run = DryingRun.Simulate(Coat, TestCoat.VapourPressurePa(25, 82), null, keepTrajectory: true);
        Assert.Equal(0, run.Trajectory[0].TimeS);
        Assert.Equal(25, run.Trajectory[0].FilmTemperatureC, 9);
        Assert.Equal(1, run.Trajectory[0].SolventLeftFraction, 9);
        Assert.Equal(run.TimeToSetS!.Value, run.Trajectory[^1].TimeS, 9);
        Assert.Equal(0.5, run.Trajectory[^1].PolymerFraction, 9);
        Assert.Equal(run.WaterAtSetGPerM2, run.Trajectory[^1].WaterGPerM2, 9);
        Assert.Equal(run.LastFilmTemperatureC, run.Trajectory[^1].FilmTemperatureC, 9);
        Assert.All(run.Trajectory.Zip(run.Trajectory.Skip(1)), pair =>
        {
            Assert.True(pair.Second.TimeS > pair.First.TimeS);
            Assert.True(pair.Second.PolymerFraction > pair.First.PolymerFraction);
        });
        Assert.InRange(run.Trajectory.Min(point => point.FilmTemperatureC) - run.LowestFilmTemperatureC, 0, 0.02);
    }

    [Fact]
    public void Trajectory_WhenNotAskedFor_IsEmpty() => Assert.Empty(DryingRun.Simulate(Coat, 1500).Trajectory);

    [Fact]
    public void Run_WithManyMoreSteps_AllocatesNoMore()
    {
        FilmParameters coarse = new() { Tolerance = 1e-3 };
        FilmParameters fine = new() { Tolerance = 1e-8 };
        (long Bytes, int Steps) Cost(FilmParameters parameters)
        {
            DryingRun.Simulate(Coat, 2000, parameters);
            long before = GC.GetAllocatedBytesForCurrentThread();
            int steps = DryingRun.Simulate(Coat, 2000, parameters).Steps;
            return (GC.GetAllocatedBytesForCurrentThread() - before, steps);
        }

        (long Bytes, int Steps) few = Cost(coarse);
        (long Bytes, int Steps) many = Cost(fine);
        Assert.True(many.Steps > 4 * few.Steps, $"{few.Steps} and {many.Steps} steps");
        Assert.InRange(many.Bytes, few.Bytes - 512, few.Bytes + 512);
    }

    [Fact]
    public void Film_ThatIsSetAsItLands_SetsAtOnceWithoutWater()
    {
        DryingResult run = DryingRun.Simulate(TestCoat.Conditions(new BoothWatch.Solvents.Mix([(TestCoat.Materials.Solvents["toluene"], 0.4)], 0.6)), 2000);
        Assert.Equal(0, run.TimeToSetS);
        Assert.Equal(0, run.WaterAtSetGPerM2);
    }

    [Fact]
    public void Film_TooSlowForTheLongestRun_HasNoTimeToSet() => Assert.Null(
        DryingRun.Simulate(TestCoat.Conditions(TestCoat.NitrateIn("2-butoxyethyl acetate"), airC: 5, wetFilmUm: 300), 500).TimeToSetS);

    [Theory]
    [InlineData(0.2, 1.0)]
    [InlineData(1.0, 3.0)]
    public void MoreAir_DriesFaster(double slow, double fast) => Assert.True(
        DryingRun.Simulate(Coat with { AirSpeedMPerS = fast }, 1000).TimeToSetS < DryingRun.Simulate(Coat with { AirSpeedMPerS = slow }, 1000).TimeToSetS);

    [Fact]
    public void Evaporation_OfButylAcetate_CoolsGlassByNoMoreThanItsHeat()
    {
        // Energy: the film cannot cool 3 mm of glass by more than the heat of vaporisation of all its solvent.
        CoatConditions neat = TestCoat.Conditions(TestCoat.NitrateIn("n-butyl acetate"), wetFilmUm: 100, substrate: "glass");
        double mostHeat = 100e-6 * 880 / 0.11616 * 44_500; // J/m², all of 100 µm
        double coolestByHeat = 25 - (mostHeat / (0.003 * 2.1e6));
        Assert.InRange(DryingRun.Simulate(neat, 0).LowestFilmTemperatureC, coolestByHeat, 25);
    }
}
