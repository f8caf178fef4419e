using BoothWatch.Air;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Air;

[Properties(Arbitrary = [typeof(AirStates)])]
public class MoistAirTests
{
    private const double SeaLevelPa = 101_325;

    // ASHRAE Handbook Fundamentals (2017), chapter 1, table 2, saturated air at 101.325 kPa (values from memory):
    // humidity ratio and enthalpy of the real gas. The chapter states that perfect gas relations are within 0.7 % of it.
    [Theory]
    [InlineData(0, 0.003790, 9475)]
    [InlineData(10, 0.007661, 29_353)]
    [InlineData(20, 0.014758, 57_555)]
    [InlineData(30, 0.027329, 100_006)]
    [InlineData(40, 0.049141, 166_683)]
    [InlineData(50, 0.086858, 275_345)]
    public void HumidityRatioAndEnthalpy_SaturatedAirOfAshrae_AreWithinItsStatedError(double temperatureC, double ratio, double enthalpy)
    {
        MoistAir air = MoistAir.FromRelativeHumidity(temperatureC, 100, SeaLevelPa);
        Near.Relative(ratio, air.HumidityRatio, 0.007);
        Near.Relative(enthalpy, air.EnthalpyJPerKgDryAir, 0.007);
    }

    // ASHRAE Handbook Fundamentals (2001), chapter 6, example 1: 40 °C dry bulb, 20 °C wet bulb, read off the chart as
    // W = 6.5 g/kg, h = 56.7 kJ/kg, dew point 7 °C, 14 % RH, 0.896 m³/kg dry air. Half a unit of the last digit, doubled
    // for reading a chart.
    [Fact]
    public void WorkedExample_AshraeChart40And20_Agrees()
    {
        MoistAir air = MoistAir.FromHumidityRatio(40, 0.0065, SeaLevelPa);
        Near.Absolute(20, air.WetBulbC, 0.1);
        Near.Absolute(56_700, air.EnthalpyJPerKgDryAir, 400);
        Near.Absolute(7, air.DewPointC, 1);
        Near.Absolute(14, air.RelativeHumidityPct, 1);
        Near.Absolute(0.896, (1 + air.HumidityRatio) / air.DensityKgPerM3, 0.001);
    }

    // Hyland and Wexler differ from IAPWS by 0.004 °C in dew point and 0.022 % in vapour pressure, 0.024 % over ice.
    // psychrolib stops its dew point and wet bulb at 0.001 °C. It takes ice below 0 °C: its dew point there is our frost
    // point, and its wet bulb is not compared.
    [Fact]
    public void State_AgainstPsychrolib_Agrees()
    {
        IReadOnlyList<double[]> rows = Fixture.Numbers(
            "psychrolib-states.csv",
            "temperatureC", "relativeHumidityPct", "pressurePa", "dewOrFrostPointC", "wetBulbC", "humidityRatio", "densityKgPerM3", "enthalpyJPerKg");
        int wetBulbs = 0;
        foreach (double[] row in rows)
        {
            MoistAir air = MoistAir.FromRelativeHumidity(row[0], row[1], row[2]);
            Near.Absolute(row[3], row[3] > 0.01 ? air.DewPointC : air.FrostPointC!.Value, 0.006);
            Near.Relative(row[5], air.HumidityRatio, 3e-4);
            Near.Relative(row[6], air.DensityKgPerM3, 2e-5);
            Near.Relative(row[7], air.EnthalpyJPerKgDryAir, 3e-4);
            if (row[4] > 0.01)
            {
                Near.Absolute(row[4], air.WetBulbC, 0.006);
                wetBulbs++;
            }
        }

        Assert.True(wetBulbs > 300, $"only {wetBulbs} wet bulbs were compared");
    }

    // CIPM-2007 (A. Picard and others, Metrologia 45 (2008) 149-155), with 400 µmol/mol of carbon dioxide: the real gas.
    // What BoothWatch leaves out (compressibility 0.04 %, enhancement 0.4 % of the vapour) stays within 0.1 % in rooms.
    [Theory]
    [InlineData(15, 60_000)]
    [InlineData(15, 101_325)]
    [InlineData(20, 101_325)]
    [InlineData(27, 90_000)]
    [InlineData(27, 110_000)]
    public void Density_AgainstCipm2007_IsWithinATenthOfAPercent(double temperatureC, double pressurePa)
    {
        for (double humidityPct = 0; humidityPct <= 100; humidityPct += 10)
        {
            double actual = MoistAir.FromRelativeHumidity(temperatureC, humidityPct, pressurePa).DensityKgPerM3;
            Near.Relative(Cipm2007Density(temperatureC, humidityPct, pressurePa), actual, 1e-3);
        }
    }

    // ASHRAE wet bulb of perfectly dry air at 26.7 °C and sea level: 9.05 °C.
    [Fact]
    public void WetBulb_DryAir_AgreesWithAshrae() =>
        Near.Absolute(9.05, MoistAir.FromRelativeHumidity(26.7, 0, SeaLevelPa).WetBulbC, 0.01);

    [Property(MaxTest = 500)]
    public void DewPointAndWetBulb_AnyAir_AreOrdered(MoistAir air)
    {
        Assert.True(air.DewPointC <= air.TemperatureC + 1e-9, $"dew point {air.DewPointC} °C of {air}");
        Assert.True(air.WetBulbC <= air.TemperatureC + 1e-7, $"wet bulb {air.WetBulbC} °C of {air}");
        Assert.True(air.WetBulbC >= air.DewPointC - 1e-7, $"wet bulb {air.WetBulbC} °C of {air}");
        Assert.True(air.FrostPointC is null || air.FrostPointC >= air.DewPointC, $"frost point {air.FrostPointC} °C of {air}");
    }

    [Property(MaxTest = 500)]
    public void WetBulb_AnyAir_BalancesTheHeat(MoistAir air)
    {
        // adiabatic saturation: evaporating liquid water of the wet-bulb temperature until saturated adds only its own enthalpy
        MoistAir saturated = MoistAir.FromRelativeHumidity(Math.Max(air.WetBulbC, MoistAir.LowestTemperatureC), 100, air.PressurePa);
        double added = (saturated.HumidityRatio - air.HumidityRatio) * 4186 * saturated.TemperatureC;
        if (air.WetBulbC >= MoistAir.LowestTemperatureC)
        {
            Near.Absolute(saturated.EnthalpyJPerKgDryAir, air.EnthalpyJPerKgDryAir + added, 1e-9 * Math.Max(1e5, Math.Abs(saturated.EnthalpyJPerKgDryAir)));
        }
    }

    [Property(MaxTest = 500)]
    public void DewPoint_MoreHumidity_Rises(MoistAir air)
    {
        double morePct = air.RelativeHumidityPct + (0.01 * (100 - air.RelativeHumidityPct));
        if (morePct > air.RelativeHumidityPct && morePct * SaturationPressure.OverWater(air.TemperatureC) / 100 < air.PressurePa)
        {
            MoistAir damper = MoistAir.FromRelativeHumidity(air.TemperatureC, morePct, air.PressurePa);
            Assert.True(damper.DewPointC > air.DewPointC || damper.DewPointC == DewPoint.LowestC, $"{air}");
            Assert.True(damper.HumidityRatio > air.HumidityRatio, $"{air}");
            Assert.True(damper.WetBulbC > air.WetBulbC, $"{air}");
            Assert.True(damper.DensityKgPerM3 < air.DensityKgPerM3, $"{air}");
        }
    }

    [Property(MaxTest = 500)]
    public void DewPoint_WarmerAtTheSameHumidity_Rises(MoistAir air)
    {
        double warmerC = air.TemperatureC + 0.1;
        if (warmerC <= MoistAir.HighestTemperatureC && air.RelativeHumidityPct / 100 * SaturationPressure.OverWater(warmerC) < air.PressurePa)
        {
            MoistAir warmer = MoistAir.FromRelativeHumidity(warmerC, air.RelativeHumidityPct, air.PressurePa);
            Assert.True(warmer.DewPointC > air.DewPointC || warmer.DewPointC == DewPoint.LowestC, $"{air}");
        }
    }

    [Property(MaxTest = 500)]
    public void FromDewPointAndFromHumidityRatio_OfAnyAir_GiveItBack(MoistAir air)
    {
        if (air.DewPointC > DewPoint.LowestC)
        {
            MoistAir fromDewPoint = MoistAir.FromDewPoint(air.TemperatureC, Math.Min(air.DewPointC, air.TemperatureC), air.PressurePa);
            Near.Relative(air.RelativeHumidityPct, fromDewPoint.RelativeHumidityPct, 1e-9);
        }

        MoistAir fromRatio = MoistAir.FromHumidityRatio(air.TemperatureC, air.HumidityRatio * (1 - 1e-15), air.PressurePa);
        Near.Absolute(air.RelativeHumidityPct, fromRatio.RelativeHumidityPct, 1e-9);
        if (air.FrostPointC is double frostPointC && frostPointC > DewPoint.LowestC)
        {
            Near.Absolute(air.RelativeHumidityPct, RelativeHumidity.FromFrostPoint(air.TemperatureC, frostPointC - 1e-9), 1e-6);
        }
    }

    [Fact]
    public void FromHumidityRatio_OfSaturatedAir_IsSaturated()
    {
        for (double temperatureC = -60; temperatureC <= 80; temperatureC += 0.25)
        {
            double ratio = MoistAir.FromRelativeHumidity(temperatureC, 100, SeaLevelPa).HumidityRatio;
            Near.Absolute(100, MoistAir.FromHumidityRatio(temperatureC, ratio, SeaLevelPa).RelativeHumidityPct, 1e-9);
        }
    }

    [Fact]
    public void Sweep_WholeRange_IsFinite()
    {
        for (double temperatureC = -60; temperatureC <= 90; temperatureC += 2.5)
        {
            for (double humidityPct = 0; humidityPct <= 100; humidityPct += 2.5)
            {
                foreach (double pressurePa in (double[])[50_000, 75_000, 101_325, 120_000])
                {
                    if (humidityPct / 100 * SaturationPressure.OverWater(temperatureC) < pressurePa)
                    {
                        MoistAir air = MoistAir.FromRelativeHumidity(temperatureC, humidityPct, pressurePa);
                        double sum = air.DewPointC + air.WetBulbC + air.HumidityRatio + air.EnthalpyJPerKgDryAir + air.DensityKgPerM3
                            + air.VapourDensityKgPerM3 + (air.FrostPointC ?? 0);
                        Assert.True(double.IsFinite(sum), $"{air}");
                        Assert.True(air.DensityKgPerM3 is > 0.3 and < 2, $"{air}");
                        Near.Absolute(air.DensityKgPerM3, air.VapourDensityKgPerM3 + (air.VapourDensityKgPerM3 > 0 ? air.VapourDensityKgPerM3 / air.HumidityRatio : air.DensityKgPerM3), 1e-9);
                    }
                }
            }
        }
    }

    [Theory]
    [InlineData(-60.1, 50, 101_325, "temperatureC is -60.1 °C; the range is -60 to 90 °C")]
    [InlineData(90.1, 50, 101_325, "temperatureC is 90.1 °C; the range is -60 to 90 °C")]
    [InlineData(double.NaN, 50, 101_325, "temperatureC is NaN °C; the range is -60 to 90 °C")]
    [InlineData(20, -0.1, 101_325, "relativeHumidityPct is -0.1 %; the range is 0 to 100 %")]
    [InlineData(20, 100.1, 101_325, "relativeHumidityPct is 100.1 %; the range is 0 to 100 %")]
    [InlineData(20, double.NaN, 101_325, "relativeHumidityPct is NaN %; the range is 0 to 100 %")]
    [InlineData(20, 50, 1013.25, "pressurePa is 1013.25 Pa; the range is 50000 to 120000 Pa")]
    [InlineData(20, 50, 120_001, "pressurePa is 120001 Pa; the range is 50000 to 120000 Pa")]
    [InlineData(20, 50, double.NaN, "pressurePa is NaN Pa; the range is 50000 to 120000 Pa")]
    [InlineData(90, 100, 60_000, "pressurePa is 60000 Pa; it must exceed the vapour pressure, 70183 Pa")]
    public void FromRelativeHumidity_OutOfRange_NamesValueAndRange(double temperatureC, double humidityPct, double pressurePa, string words)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(
            () => MoistAir.FromRelativeHumidity(temperatureC, humidityPct, pressurePa));
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FromDewPointAndFromHumidityRatio_PastSaturation_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.FromDewPoint(20, 20.1, SeaLevelPa));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.FromHumidityRatio(20, 0.0149, SeaLevelPa));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.FromHumidityRatio(20, -0.0001, SeaLevelPa));
        Assert.Throws<ArgumentOutOfRangeException>(() => RelativeHumidity.FromFrostPoint(-10, -8));
    }

    [Fact]
    public void Equality_SameState_HoldsAndPrintsTheState()
    {
        MoistAir air = MoistAir.FromRelativeHumidity(24, 60, SeaLevelPa);
        Assert.Equal(air, MoistAir.FromRelativeHumidity(24, 60, SeaLevelPa));
        Assert.NotEqual(air, MoistAir.FromRelativeHumidity(24, 60.1, SeaLevelPa));
        Assert.Equal("24.0 °C, 60.0 % RH, 101325 Pa", air.ToString());
    }

    private static double Cipm2007Density(double t, double humidityPct, double p)
    {
        double kelvin = t + 273.15;
        double enhancement = 1.00062 + (3.14e-8 * p) + (5.6e-7 * t * t);
        double saturationPa = Math.Exp((1.2378847e-5 * kelvin * kelvin) - (1.9121316e-2 * kelvin) + 33.93711047 - (6.3431645e3 / kelvin));
        double x = humidityPct / 100 * enhancement * saturationPa / p;
        double z = 1 - (p / kelvin * (1.58123e-6 - (2.9331e-8 * t) + (1.1043e-10 * t * t) + ((5.707e-6 - (2.051e-8 * t)) * x) + ((1.9898e-4 - (2.376e-6 * t)) * x * x)))
            + (p * p / (kelvin * kelvin) * (1.83e-11 - (0.765e-8 * x * x)));
        return 3.483740e-3 * p / (z * kelvin) * (1 - (0.3780 * x));
    }
}
