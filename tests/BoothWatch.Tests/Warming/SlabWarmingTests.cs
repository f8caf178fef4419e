using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Warming;
using FsCheck.Xunit;
using Xunit.Abstractions;

namespace BoothWatch.Tests.Warming;

public class SlabWarmingTests(ITestOutputHelper output)
{
    private static readonly Substrate ThickWood = new("thick wood", 0.045, 0.15, 770_000);
    private static readonly MoistAir Air = MoistAir.FromRelativeHumidity(21, 45, 101_325);

    [Fact]
    public void Until_PiecesFromAColdVan_HaveARange()
    {
        foreach (Substrate body in new[] { ThickWood with { ThicknessM = 0.004 }, ThickWood with { ThicknessM = 0.02 }, ThickWood, new("steel panel", 0.0008, 50, 3.7e6), new("steel plate", 0.01, 50, 3.7e6) })
        {
            WarmingTime time = SlabWarming.Until(body, Air, 0.5, 5, 0.3, 16)!.Value;
            output.WriteLine($"{body.Id} {body.ThicknessM * 1000} mm: {time.LeftS / 60:0.0} min ({time.LeastS / 60:0.0} to {time.MostS / 60:0.0})");
            Assert.True(time.LeastS < time.LeftS && time.LeftS < time.MostS);
        }
    }

    /// <summary>In dry air the surface gets to the target when the exact solution says so, and the middle is then as cold as it says.</summary>
    [Theory]
    [InlineData(0.004)]
    [InlineData(0.018)]
    [InlineData(0.045)]
    [InlineData(0.1)]
    public void Surface_InDryAir_IsWarmWhenTheExactSolutionIs(double thicknessM)
    {
        MoistAir dry = MoistAir.FromRelativeHumidity(21, 0, 101_325);
        Substrate body = ThickWood with { ThicknessM = thicknessM };
        (double afterS, double coreC, _) = SlabWarming.Surface(body, dry, 0.5, SlabWarming.LengthM, 5, 16)!.Value;
        double halfM = thicknessM / 2;
        double biot = SlabRun.In(body, dry, 0.5, SlabWarming.LengthM, 5).TransferWPerM2K * halfM / body.ConductivityWPerMK;
        double fourier = afterS * body.ConductivityWPerMK / body.VolumetricHeatCapacityJPerM3K / (halfM * halfM);
        Assert.Equal(16, 21 - (16 * PlaneWall.Left(biot, fourier, 1)), 0.15);
        Assert.Equal(coreC, 21 - (16 * PlaneWall.Left(biot, fourier, 0)), 0.25);
    }

    [Fact]
    public void Until_AlreadyWarm_IsNow() => Assert.Equal(0, SlabWarming.Until(ThickWood, Air, 0.5, 16, 0.3, 16)!.Value.LeftS);

    [Theory]
    [InlineData(21)]
    [InlineData(25)]
    public void Until_ATargetThatTheAirDoesNotReach_IsNever(double targetC) => Assert.Null(SlabWarming.Until(ThickWood, Air, 0.5, 5, 0.3, targetC));

    /// <summary>A colder piece is never ready sooner, nor is a thicker one, nor one in colder air.</summary>
    [Property(MaxTest = 200)]
    public bool Until_WorseInOneRespect_IsNeverSooner(byte start, byte colder, byte thickness, byte thicker, byte humidity, byte coolerAir)
    {
        double startC = (start / 255.0 * 14) - 4;
        double humidityPct = humidity / 255.0 * 90;
        double thicknessM = 0.002 + (thickness / 255.0 * 0.06);
        double vapourPa = MoistAir.FromRelativeHumidity(21, humidityPct, 101_325).VapourPressurePa;
        const double TargetC = 14;
        double Time(double fromC, double metres, double airC) =>
            SlabWarming.Until(ThickWood with { ThicknessM = metres }, InAir(airC, vapourPa), 0.5, fromC, 0.3, TargetC)?.LeftS ?? double.PositiveInfinity;
        double now = Time(startC, thicknessM, 21);
        const double Rounding = 1.03; // steps of two percent land on either side, and a thicker body has coarser cells
        return Time(startC - (colder / 255.0 * 10), thicknessM, 21) * Rounding >= now
            && Time(startC, thicknessM + (thicker / 255.0 * 0.05), 21) * Rounding >= now
            && Time(startC, thicknessM, 21 - (coolerAir / 255.0 * 1.5)) * Rounding >= now;
    }

    private static MoistAir InAir(double airC, double vapourPa) =>
        MoistAir.FromRelativeHumidity(airC, Math.Min(100, 100 * vapourPa / SaturationPressure.OverWater(airC)), 101_325);
}
