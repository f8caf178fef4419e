using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Warming;

namespace BoothWatch.Tests.Warming;

public class SlabRunTests
{
    /// <summary>Roots of ζ tan ζ = Bi: Carslaw and Jaeger, Conduction of Heat in Solids, appendix IV, table I; Incropera and others, table 5.1 (both from memory).</summary>
    [Theory]
    [InlineData(0.1, 0, 0.3111)]
    [InlineData(0.5, 0, 0.6533)]
    [InlineData(1.0, 0, 0.8603)]
    [InlineData(1.0, 1, 3.4256)]
    [InlineData(1.0, 2, 6.4373)]
    [InlineData(5.0, 0, 1.3138)]
    [InlineData(10.0, 0, 1.4289)]
    [InlineData(10.0, 1, 4.3058)]
    public void ExactSolution_ItsRoots_AreThoseOfTheTables(double biot, int n, double root)
    {
        Assert.Equal(root, PlaneWall.Root(biot, n), 5e-5);
        Assert.Equal(root, PlaneWallModes.Root(biot, n), 5e-5);
    }

    /// <summary>
    /// Incropera and others, 6th edition, example 5.4 (from memory): a steel wall of 40 mm at -20 °C, insulated on one side, meets oil of 60 °C
    /// with 500 W/(m² K); k = 63.9 W/(m K), 7832 kg/m³, 434 J/(kg K). After 8 min: 42.9 °C on the insulated side, 45.2 °C at the oil.
    /// The book rounds to 0.1 °C and uses one term of the series.
    /// </summary>
    [Fact]
    public void WorkedExample_OfTheHandbook_IsMet()
    {
        SlabRun run = new(new Substrate("steel", 0.08, 63.9, 7832.0 * 434), 60, 0, 500, 0, -20);
        Until(run, 480);
        Assert.Equal(42.9, run.CoreC, 0.3);
        Assert.Equal(45.2, run.SurfaceC, 0.3);
    }

    /// <summary>The exact solution over the Biot and Fourier numbers of every piece that is sprayed; 1 % of the first difference.</summary>
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(10)]
    public void Temperatures_OverTime_AreThoseOfTheExactSolution(double biot)
    {
        const double HalfM = 0.02;
        const double Conductivity = 0.15;
        const double Capacity = 770_000;
        SlabRun run = new(new Substrate("wood", 2 * HalfM, Conductivity, Capacity), 0, 0, biot * Conductivity / HalfM, 0, -1);
        foreach (double fourier in new[] { 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10 })
        {
            Until(run, fourier * HalfM * HalfM * Capacity / Conductivity);
            Assert.Equal(PlaneWall.Left(biot, fourier, 1), -run.SurfaceC, 0.01);
            Assert.Equal(PlaneWall.Left(biot, fourier, 0), -run.CoreC, 0.015);
        }
    }

    /// <summary>A body that conducts well warms as one: T = Tair - (Tair - T0) exp(-2 h t / (ρ c d)), Incropera and others, equation 5.6.</summary>
    [Fact]
    public void ThinSteel_WarmsAsOneLump()
    {
        var run = SlabRun.In(new Substrate("steel panel", 0.0008, 50, 3.7e6), Dry(22), 0.5, SlabWarming.LengthM, 5);
        double timeConstantS = 3.7e6 * 0.0008 / 2 / run.TransferWPerM2K;
        Assert.InRange(run.TransferWPerM2K, 10, 16);
        Until(run, timeConstantS);
        Assert.Equal(22 - (17 * Math.Exp(-1)), run.SurfaceC, 0.1);
        Assert.Equal(run.CoreC, run.SurfaceC, 0.01);
    }

    /// <summary>A wetted body of no great mass goes to the wet bulb and stays there while there is water: the psychrometer itself.</summary>
    [Fact]
    public void DewOnAThinPanel_ThatDries_HoldsItNearTheWetBulb()
    {
        MoistAir humid = MoistAir.FromRelativeHumidity(24, 85, 101_325);
        var run = SlabRun.In(new Substrate("steel panel", 0.0008, 50, 3.7e6), humid, 2, SlabWarming.LengthM, 0);
        double mostDew = 0;
        double shareOfWetBulb = double.NaN;
        while (run.TimeS < 3600)
        {
            run.Step();
            mostDew = Math.Max(mostDew, run.DewGPerM2);
            if (run.DewGPerM2 > 0 && run.SurfaceC > humid.DewPointC)
            {
                shareOfWetBulb = (run.SurfaceC - humid.DewPointC) / (humid.WetBulbC - humid.DewPointC);
            }
        }

        // Radiation warms it a little beyond what a shielded psychrometer shows, and the panel has a mass.
        Assert.InRange(mostDew, 1, 30);
        Assert.InRange(shareOfWetBulb, 0.5, 1.6);
        Assert.Equal(0, run.DewGPerM2);
        Assert.Equal(24, run.SurfaceC, 0.1);
    }

    /// <summary>What the dew gives in heat is what the panel gains beyond the same panel in dry air: energy is kept.</summary>
    [Fact]
    public void Dew_WhileItFalls_WarmsThePieceByItsHeat()
    {
        Substrate panel = new("steel panel", 0.0008, 50, 3.7e6);
        MoistAir humid = MoistAir.FromRelativeHumidity(24, 85, 101_325);
        var wet = SlabRun.In(panel, humid, 0.5, SlabWarming.LengthM, 2);
        double convectedJPerM2 = 0;
        while (wet.SurfaceC < humid.DewPointC - 0.5)
        {
            double before = wet.TimeS;
            wet.Step();
            convectedJPerM2 += wet.TransferWPerM2K * (24 - wet.SurfaceC) * (wet.TimeS - before);
        }

        double gainedJPerM2 = 3.7e6 * 0.0004 * (wet.SurfaceC - 2);
        double latentJPerM2 = wet.DewGPerM2 / 1000 * 2.46e6; // heat of vaporisation at 15 to 20 °C, 2.46 MJ/kg (steam tables)
        Assert.InRange(latentJPerM2, 0.1 * gainedJPerM2, 0.7 * gainedJPerM2);
        Assert.Equal(gainedJPerM2, convectedJPerM2 + latentJPerM2, 0.02 * gainedJPerM2);
    }

    private static MoistAir Dry(double temperatureC) => MoistAir.FromRelativeHumidity(temperatureC, 0, 101_325);

    private static void Until(SlabRun run, double timeS)
    {
        while (run.TimeS < timeS - 1e-9)
        {
            run.Step(timeS);
        }
    }
}
