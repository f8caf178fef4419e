using BoothWatch.Air;

namespace BoothWatch.Tests.Air;

/// <summary>Holds the dew point and humidity ratio against those that others published with their measurements: as statistics, not row by row.</summary>
public class OpenDataTests
{
    // The lake station rounds temperature and dew point to 0.1 °C and humidity to 1 %. Even spread over these steps gives
    // a standard deviation of 0.03 °C each for the two temperatures and about 0.06 °C for the humidity: 0.08 °C.
    [Fact]
    public void DewPoint_LakeStationZurich_DiffersByItsRoundingOnly()
    {
        double[] off = [.. Fixture.Numbers("zurich-tiefenbrunnen-2020.csv", "temperatureC", "relativeHumidityPct", "pressureHPa", "dewPointC")
            .Select(row => MoistAir.FromRelativeHumidity(row[0], row[1], 100 * row[2]).DewPointC - row[3])];
        Assert.True(off.Length > 800);
        Assert.InRange(off.Average(), -0.01, 0.01);
        Assert.InRange(Deviation(off), 0.05, 0.1);
        Assert.InRange(off.Max(Math.Abs), 0, 0.4);
    }

    // The airports publish °F; humidity is calculated from the two temperatures, to 0.01 %. Some rows carry a
    // humidity that belongs to another minute, so the median and the share within 0.05 °C are judged, not the mean.
    [Fact]
    public void DewPoint_NewYorkAirports_AgreesForNearlyAll()
    {
        double[] off = [.. Fixture.Numbers("new-york-airports-2013.csv", "temperatureF", "relativeHumidityPct", "dewPointF")
            .Select(row => MoistAir.FromRelativeHumidity(Celsius(row[0]), Math.Min(row[1], 100), 101_325).DewPointC - Celsius(row[2]))
            .Order()];
        Assert.True(off.Length > 250);
        Assert.InRange(off[off.Length / 2], -0.01, 0.01);
        Assert.True(off.Count(value => Math.Abs(value) < 0.05) > 0.85 * off.Length);
    }

    // The authors do not state their pressure; at 101,325 Pa the humidity ratio agrees to 0.015 %.
    [Fact]
    public void HumidityRatio_OfficeRoom_Agrees()
    {
        double[] off = [.. Fixture.Numbers("office-room-2015.csv", "temperatureC", "relativeHumidityPct", "humidityRatio")
            .Select(row => (MoistAir.FromRelativeHumidity(row[0], row[1], 101_325).HumidityRatio / row[2]) - 1)];
        Assert.True(off.Length > 250);
        Assert.InRange(off.Average(), -3e-4, 3e-4);
        Assert.InRange(off.Max(Math.Abs), 0, 5e-4);
    }

    private static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    private static double Deviation(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Average(value => (value - mean) * (value - mean)));
    }
}
