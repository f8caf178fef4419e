using BoothWatch.Air;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Air;

public class DewPointTests
{
    private const double SeaLevelPa = 101_325;

    // Dew points for painters, in tenths of a degree, from 5 °C in steps of 1 °C, as in ISO 8502-4. Source: a paint maker's
    // information sheet 1650, "Relation between dew point, air temperature and relative humidity" (June 2013), the columns
    // as far as they were at hand. Below 0 °C the sheet is over ice, so that the frost point is compared. It is no better
    // than its purpose needs: single entries break the even steps of their column by 0.1 °C, and its 70 % column
    // is 0.07 °C low throughout. So 0.15 °C for an entry and 0.08 °C for the mean of a column.
    [Theory]
    [InlineData(50, new[] { -4.1, -3.2, -2.4, -1.6, -0.8, 0.1, 1.0, 1.9, 2.8, 3.7, 4.7, 5.6, 6.5, 7.4, 8.3, 9.3, 10.2, 11.1, 12.0, 12.9, 13.8, 14.8, 15.7, 16.6, 17.5, 18.4 })]
    [InlineData(55, new[] { -2.9, -2.1, -1.3, -0.4, 0.4, 1.3, 2.3, 3.2, 4.2, 5.1, 6.1, 7.0, 7.9, 8.8, 9.7, 10.7, 11.6, 12.5, 13.5, 14.4, 15.3, 16.2, 17.2, 18.1, 19.1, 20.0 })]
    [InlineData(60, new[] { -1.8, -1.0, -0.2, 0.8, 1.7, 2.6, 3.5, 4.5, 5.4, 6.4, 7.3, 8.3, 9.2, 10.2, 11.1, 12.0, 12.9, 13.8, 14.8, 15.7, 16.7, 17.6, 18.6, 19.5, 20.5, 21.4 })]
    [InlineData(65, new[] { -0.9, -0.1, 0.8, 1.8, 2.7, 3.7, 4.6, 5.6, 6.6, 7.5, 8.5 })]
    [InlineData(70, new[] { 0.0, 0.9, 1.8, 2.8, 3.8, 4.7, 5.6, 6.6, 7.6, 8.6, 9.5 })]
    [InlineData(75, new[] { 0.9, 1.8, 2.8, 3.8, 4.7, 5.7, 6.7, 7.7, 8.6, 9.6, 10.6 })]
    [InlineData(80, new[] { 1.8, 2.8, 3.7, 4.7, 5.7, 6.7, 7.6, 8.6, 9.6, 10.6, 11.5 })]
    [InlineData(85, new[] { 2.7, 3.7, 4.6, 5.6, 6.6, 7.6, 8.6, 9.6, 10.6, 11.5, 12.5 })]
    [InlineData(90, new[] { 3.6, 4.5, 5.5, 6.5, 7.5, 8.4, 9.4, 10.4, 11.4, 12.4, 13.4 })]
    public void DewPoint_PaintersTable_Agrees(double humidityPct, double[] expectedFrom5C)
    {
        double off = 0;
        for (int i = 0; i < expectedFrom5C.Length; i++)
        {
            MoistAir air = MoistAir.FromRelativeHumidity(5 + i, humidityPct, SeaLevelPa);
            double actualC = expectedFrom5C[i] < 0 ? air.FrostPointC!.Value : air.DewPointC;
            Near.Absolute(expectedFrom5C[i], actualC, 0.15);
            off += actualC - expectedFrom5C[i];
        }

        Assert.InRange(off / expectedFrom5C.Length, -0.08, 0.08);
    }

    // The three dew points every painter checks a meter with, to their tenth of a degree (common practice, no source).
    [Theory]
    [InlineData(20, 50, 9.3)]
    [InlineData(25, 60, 16.7)]
    [InlineData(30, 55, 20.0)]
    public void DewPoint_ShopValues_Agree(double temperatureC, double humidityPct, double expectedC) =>
        Near.Absolute(expectedC, MoistAir.FromRelativeHumidity(temperatureC, humidityPct, SeaLevelPa).DewPointC, 0.05);

    // The requirement: below 0.01 °C from -20 to 50 °C and 5 to 100 % RH. Dew points under -25 °C are judged at 0.02 °C:
    // below freezing IAPWS-95 is itself an extrapolation (stated as reasonable down to 236 K), and Murphy and Koop part
    // from it by 0.011 °C at -30 °C and 0.014 °C at -35 °C.
    [Fact]
    public void DewPoint_AgainstIapws95_IsWithinAHundredthOfADegree()
    {
        IReadOnlyList<double[]> table = Fixture.Numbers("iapws95-saturation.csv", "temperatureC", "saturationPa");
        int judged = 0;
        foreach (double[] air in table.Where(row => row[0] is >= -20 and <= 50))
        {
            foreach (double[] dew in table.Where(row => row[0] <= air[0] && row[1] >= 0.05 * air[1]))
            {
                double humidityPct = 100 * (dew[1] / air[1]);
                double actualC = MoistAir.FromRelativeHumidity(air[0], humidityPct, SeaLevelPa).DewPointC;
                Near.Absolute(dew[0], actualC, dew[0] >= -25 ? 0.01 : 0.02);
                judged++;
            }
        }

        Assert.True(judged > 2500, $"only {judged} states were judged");
    }

    [Property]
    public void OverWater_OfSaturationPressure_IsTheTemperature(int millionths)
    {
        double celsius = Between(DewPoint.LowestC + 0.001, SaturationPressure.HighestC - 0.001, millionths);
        Near.Absolute(celsius, DewPoint.OverWater(SaturationPressure.OverWater(celsius)), 1e-8);
    }

    [Property]
    public void OverIce_OfSaturationPressure_IsTheTemperature(int millionths)
    {
        double celsius = Between(DewPoint.LowestC + 0.001, 0, millionths);
        Near.Absolute(celsius, DewPoint.OverIce(SaturationPressure.OverIce(celsius)), 1e-8);
    }

    // A sweep in even steps of ln p converges everywhere and rises.
    [Fact]
    public void Sweep_WholeRangeOfPressures_ConvergesAndRises()
    {
        double lastWater = double.NegativeInfinity;
        double lastIce = double.NegativeInfinity;
        for (double pressurePa = 0.004; pressurePa < 1.5e6; pressurePa *= 1.003)
        {
            double dewPointC = DewPoint.OverWater(pressurePa);
            Assert.True(dewPointC > lastWater, $"dew point at {pressurePa} Pa");
            lastWater = dewPointC;
            if (pressurePa < 611)
            {
                double frostPointC = DewPoint.OverIce(pressurePa);
                Assert.True(frostPointC > lastIce && frostPointC > dewPointC, $"frost point at {pressurePa} Pa");
                lastIce = frostPointC;
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e-12)]
    [InlineData(0.001)]
    public void OverWater_DrierThanTheLowestDewPoint_GivesTheLowest(double pressurePa)
    {
        Assert.Equal(DewPoint.LowestC, DewPoint.OverWater(pressurePa));
        Assert.Equal(DewPoint.LowestC, DewPoint.OverIce(pressurePa));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-1)]
    [InlineData(double.PositiveInfinity)]
    public void OverWater_PressureOutOfRange_IsNamed(double pressurePa)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => DewPoint.OverWater(pressurePa));
        Assert.Contains("vapourPressurePa", error.Message, StringComparison.Ordinal);
        Assert.Contains("Pa; the range is 0 to", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OverIce_AboveTheTriplePoint_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DewPoint.OverIce(612));

    private static double Between(double lowest, double highest, int millionths) =>
        lowest + ((highest - lowest) * (Math.Abs((long)millionths) % 1_000_001 / 1e6));
}
