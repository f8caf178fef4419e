using BoothWatch.Air;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Air;

[Properties(Arbitrary = [typeof(AirStates)])]
public class AirUncertaintyTests
{
    private const double SeaLevelPa = 101_325;

    // JCGM 101:2008, the Monte Carlo method, as the judge of the first-order formula (JCGM 100:2008, equation 10).
    // 40,000 draws give a standard deviation to 0.35 %; 2 % leaves room for the curvature that first order leaves out.
    [Theory]
    [InlineData(20, 50, 0.1, 1.0)]
    [InlineData(24, 80, 0.2, 1.8)]
    [InlineData(30, 60, 0.5, 0.2)]
    [InlineData(5, 70, 0.1, 2.0)]
    [InlineData(-5, 60, 0.2, 1.0)]
    [InlineData(35, 25, 0.1, 1.0)]
    public void OfDewPoint_AgainstMonteCarlo_Agrees(double temperatureC, double humidityPct, double temperatureU, double humidityU)
    {
        Random random = new(20_261_125);
        double sum = 0;
        double squares = 0;
        const int Draws = 40_000;
        MoistAir air = MoistAir.FromRelativeHumidity(temperatureC, humidityPct, SeaLevelPa);
        for (int i = 0; i < Draws; i++)
        {
            double radius = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
            double angle = 2 * Math.PI * random.NextDouble();
            MoistAir drawn = MoistAir.FromRelativeHumidity(
                temperatureC + (temperatureU * radius * Math.Cos(angle)),
                humidityPct + (humidityU * radius * Math.Sin(angle)),
                SeaLevelPa);
            double off = drawn.DewPointC - air.DewPointC;
            sum += off;
            squares += off * off;
        }

        double mean = sum / Draws;
        double deviation = Math.Sqrt((squares / Draws) - (mean * mean));
        Near.Relative(deviation, new AirUncertainty(temperatureU, humidityU).OfDewPointC(air), 0.02);
    }

    // By hand from the Magnus equation over water (WMO-No. 8, annex 4.B: a = 17.62, b = 243.12 °C), which is good to 0.3 %
    // in slope here: ∂td/∂t = ((td + b)/(t + b))², ∂td/∂RH = (td + b)²/(a b RH). 20 °C and 50 % with td = 9.27 °C:
    // 0.920 and 0.297 °C a point. 30 °C and 80 % with td = 26.17 °C: 0.972 and 0.212 °C a point.
    [Theory]
    [InlineData(20, 50, 0.920, 0.297)]
    [InlineData(30, 80, 0.972, 0.212)]
    public void Sensitivity_RoomAir_IsWhatTheMagnusSlopeSays(double temperatureC, double humidityPct, double perDegree, double perPct)
    {
        DewPointSensitivity sensitivity = DewPointSensitivity.Of(MoistAir.FromRelativeHumidity(temperatureC, humidityPct, SeaLevelPa));
        Near.Relative(perPct, sensitivity.CPerHumidityPct, 0.005);
        Near.Relative(perDegree, sensitivity.PerTemperature, 0.005);
    }

    [Property(MaxTest = 300)]
    public void Sensitivity_AnyAirOfTwoPercentAndMore_IsTheDerivative(MoistAir air)
    {
        if (air.RelativeHumidityPct is < 2 or > 99.9 || air.DewPointC < -99 || air.TemperatureC is < -59.9 or > 89)
        {
            return;
        }

        DewPointSensitivity sensitivity = DewPointSensitivity.Of(air);
        double perPct = (DewPointOf(air.TemperatureC, air.RelativeHumidityPct + 0.01) - DewPointOf(air.TemperatureC, air.RelativeHumidityPct - 0.01)) / 0.02;
        double perDegree = (DewPointOf(air.TemperatureC + 0.01, air.RelativeHumidityPct) - DewPointOf(air.TemperatureC - 0.01, air.RelativeHumidityPct)) / 0.02;
        Near.Relative(perPct, sensitivity.CPerHumidityPct, 2e-4);
        Near.Relative(perDegree, sensitivity.PerTemperature, 2e-4);
    }

    [Fact]
    public void OfDewPoint_PerfectlyDryAir_IsFinite()
    {
        double uncertaintyC = new AirUncertainty(0.1, 1).OfDewPointC(MoistAir.FromRelativeHumidity(20, 0, SeaLevelPa));
        Assert.InRange(uncertaintyC, 5, 20);
    }

    [Fact]
    public void OfDewPoint_NoUncertainty_IsZero() =>
        Assert.Equal(0, new AirUncertainty(0, 0).OfDewPointC(MoistAir.FromRelativeHumidity(20, 50, SeaLevelPa)));

    private static double DewPointOf(double temperatureC, double humidityPct) =>
        DewPoint.OverWater(humidityPct / 100 * SaturationPressure.OverWater(temperatureC));
}
