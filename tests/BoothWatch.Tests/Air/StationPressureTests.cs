using BoothWatch.Air;

namespace BoothWatch.Tests.Air;

public class StationPressureTests
{
    // US Standard Atmosphere 1976, table 1, geometric altitude (values from memory); below 11 km the same as ICAO. Its five digits.
    [Theory]
    [InlineData(0, 101_325)]
    [InlineData(500, 95_461)]
    [InlineData(1000, 89_876)]
    [InlineData(2000, 79_501)]
    [InlineData(3000, 70_121)]
    [InlineData(5000, 54_048)]
    public void AtAltitude_StandardAtmosphere_Agrees(double altitudeM, double expectedPa) =>
        Near.Absolute(expectedPa, StationPressure.AtAltitude(altitudeM), 1);

    // psychrolib: ASHRAE Handbook Fundamentals (2017), chapter 1, equation (3), which takes altitude as geopotential and
    // rounds its constants; 0.02 % at 3000 m.
    [Fact]
    public void AtAltitude_AgainstPsychrolib_Agrees()
    {
        foreach (double[] row in Fixture.Numbers("psychrolib-pressure.csv", "altitudeM", "standardPressurePa"))
        {
            Near.Relative(row[1], StationPressure.AtAltitude(row[0]), 3e-4);
        }
    }

    [Fact]
    public void FromSeaLevel_StandardPressure_IsTheStandardAtmosphere() =>
        Assert.Equal(StationPressure.AtAltitude(820), StationPressure.FromSeaLevel(101_325, 820));

    // At sea level a QNH is the station pressure itself; up to about 600 m a hectopascal of QNH is within 8 % of one at the station.
    [Theory]
    [InlineData(98_000)]
    [InlineData(103_500)]
    public void FromSeaLevel_OtherWeather_MovesWithIt(double seaLevelPa)
    {
        Near.Absolute(seaLevelPa, StationPressure.FromSeaLevel(seaLevelPa, 0), 1e-6);
        double moved = StationPressure.FromSeaLevel(seaLevelPa, 600) - StationPressure.AtAltitude(600);
        Assert.InRange(moved / (seaLevelPa - 101_325), 0.92, 1);
    }

    [Fact]
    public void AtAltitude_Sweep_FallsAllTheWay()
    {
        double last = double.MaxValue;
        for (double altitudeM = StationPressure.LowestAltitudeM; altitudeM <= StationPressure.HighestAltitudeM; altitudeM += 10)
        {
            double pressurePa = StationPressure.AtAltitude(altitudeM);
            Assert.True(pressurePa < last && pressurePa is > MoistAir.LowestPressurePa and < MoistAir.HighestPressurePa, $"{altitudeM} m");
            last = pressurePa;
        }
    }

    [Theory]
    [InlineData(-501)]
    [InlineData(5001)]
    [InlineData(double.NaN)]
    public void AtAltitude_OutOfRange_NamesValueAndRange(double altitudeM)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => StationPressure.AtAltitude(altitudeM));
        Assert.Contains("m; the range is -500 to 5000 m", error.Message, StringComparison.Ordinal);
    }
}
