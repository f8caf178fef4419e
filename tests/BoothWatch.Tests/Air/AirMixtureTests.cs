using BoothWatch.Air;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Air;

[Properties(Arbitrary = [typeof(AirStates)])]
public class AirMixtureTests
{
    private const double SeaLevelPa = 101_325;

    // Worked example of the ASHRAE Handbook Fundamentals (2001), chapter 6, example 4: 2 m³/s of outdoor air at 4 °C dry and 2 °C wet
    // bulb and 6.25 m³/s at 25 °C and 50 %. Figures of a real-gas program for it (chemicalogic.com, MoistAirTab example
    // 2): humidity ratio 0.0083, 19.67 °C, wet bulb 14.58 °C, 58 %, 40.83 kJ/kg; the handbook reads 19.5 and 14.6 °C off its chart.
    [Fact]
    public void Mix_OutdoorAndRoomAirOfTheHandbook_Agrees()
    {
        MoistAir outdoor = OfWetBulb(4, 2);
        MoistAir room = MoistAir.FromRelativeHumidity(25, 50, SeaLevelPa);
        AirMixture mixture = MoistAir.Mix(outdoor, 2 * DryAirDensity(outdoor), room, 6.25 * DryAirDensity(room));
        Assert.False(mixture.IsSupersaturated);
        Near.Absolute(19.67, mixture.Air.TemperatureC, 0.05);
        Near.Absolute(14.58, mixture.Air.WetBulbC, 0.05);
        Near.Absolute(58, mixture.Air.RelativeHumidityPct, 0.5);
        Near.Absolute(0.0083, mixture.Air.HumidityRatio, 0.00005 + (0.005 * 0.0083)); // two digits, and its enhancement factor
        Near.Relative(40_830, mixture.Air.EnthalpyJPerKgDryAir, 0.007);
    }

    // Worked example in a public question (physicsforums.com, thread 367493): 20 m³/min each of 5 °C, 90 % and 25 °C, 50 %
    // at 1 bar give a humidity ratio of 7.36 g/kg.
    [Fact]
    public void Mix_EqualVolumesOfColdAndWarm_Agrees()
    {
        MoistAir cold = MoistAir.FromRelativeHumidity(5, 90, 100_000);
        MoistAir warm = MoistAir.FromRelativeHumidity(25, 50, 100_000);
        AirMixture mixture = MoistAir.Mix(cold, 20 * DryAirDensity(cold), warm, 20 * DryAirDensity(warm));
        Near.Absolute(7.36e-3, mixture.Air.HumidityRatio, 0.03e-3);
    }

    [Property(MaxTest = 500)]
    public void Mix_AnyTwoAirs_KeepsWaterAndHeatAndLiesBetween(MoistAir first, MoistAir other, byte weight)
    {
        MoistAir? second = AtPressureOf(first, other);
        if (second is null)
        {
            return;
        }

        double share = weight / 255.0;
        AirMixture mixture = MoistAir.Mix(first, 1 - share, second, share);
        double water = first.HumidityRatio + (share * (second.HumidityRatio - first.HumidityRatio));
        double heat = first.EnthalpyJPerKgDryAir + (share * (second.EnthalpyJPerKgDryAir - first.EnthalpyJPerKgDryAir));
        double fogHeat = mixture.FogKgPerKgDryAir * 4186 * mixture.Air.TemperatureC;
        Near.Absolute(water, mixture.Air.HumidityRatio + mixture.FogKgPerKgDryAir, 1e-9 * Math.Max(0.01, water));
        Near.Absolute(heat, mixture.Air.EnthalpyJPerKgDryAir + fogHeat, 1e-7 * Math.Max(1e4, Math.Abs(heat)));
        Assert.True(mixture.FogKgPerKgDryAir >= 0);
        if (mixture.IsSupersaturated)
        {
            Assert.Equal(100, mixture.Air.RelativeHumidityPct);
        }
        else
        {
            Assert.InRange(mixture.Air.TemperatureC, Math.Min(first.TemperatureC, second.TemperatureC) - 1e-6, Math.Max(first.TemperatureC, second.TemperatureC) + 1e-6);
            Assert.InRange(mixture.Air.DewPointC, Math.Min(first.DewPointC, second.DewPointC) - 1e-6, Math.Max(first.DewPointC, second.DewPointC) + 1e-6);
        }
    }

    [Fact]
    public void Mix_ColdDampWithWarmDamp_IsFog()
    {
        AirMixture mixture = MoistAir.Mix(
            MoistAir.FromRelativeHumidity(0, 95, SeaLevelPa), 1, MoistAir.FromRelativeHumidity(30, 95, SeaLevelPa), 1);
        Assert.True(mixture.IsSupersaturated);
        Assert.True(mixture.Air.TemperatureC > 15, "fog gives its heat of condensation back");
        Assert.True(mixture.Air.TemperatureC < 20);
    }

    [Fact]
    public void Mix_NothingOfOne_IsTheOther()
    {
        MoistAir first = MoistAir.FromRelativeHumidity(10, 40, SeaLevelPa);
        MoistAir second = MoistAir.FromRelativeHumidity(30, 70, SeaLevelPa);
        Near.Absolute(10, MoistAir.Mix(first, 1, second, 0).Air.TemperatureC, 1e-9);
        Near.Absolute(70, MoistAir.Mix(first, 0, second, 1).Air.RelativeHumidityPct, 1e-9);
    }

    [Fact]
    public void Mix_ImpossibleMassesOrPressures_AreRefused()
    {
        MoistAir air = MoistAir.FromRelativeHumidity(10, 40, SeaLevelPa);
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.Mix(air, 0, air, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.Mix(air, -1, air, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.Mix(air, 1, air, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.Mix(air, 1, MoistAir.FromRelativeHumidity(10, 40, 90_000), 1));
    }

    private static double DryAirDensity(MoistAir air) => air.DensityKgPerM3 / (1 + air.HumidityRatio);

    private static MoistAir? AtPressureOf(MoistAir first, MoistAir other) =>
        other.VapourPressurePa < 0.9 * first.PressurePa
            ? MoistAir.FromRelativeHumidity(other.TemperatureC, other.RelativeHumidityPct, first.PressurePa)
            : null;

    private static MoistAir OfWetBulb(double temperatureC, double wetBulbC)
    {
        (double low, double high) = (0, 100);
        while (high - low > 1e-9)
        {
            double middle = (low + high) / 2;
            (low, high) = MoistAir.FromRelativeHumidity(temperatureC, middle, SeaLevelPa).WetBulbC > wetBulbC ? (low, middle) : (middle, high);
        }

        return MoistAir.FromRelativeHumidity(temperatureC, low, SeaLevelPa);
    }
}
