using BoothWatch.Air;

namespace BoothWatch.Tests.Air;

/// <summary>
/// What it costs to leave the enhancement factor out, judged by L. Greenspan, J. Res. NBS 80A (1976) 41-44, with the
/// coefficients of B. Hardy, "ITS-90 formulations ..." (1998) (from memory).
/// </summary>
public class EnhancementFactorTests
{
    private const double SeaLevelPa = 101_325;

    // ASHRAE Handbook Fundamentals (2001), chapter 6, table 2: Ws = 0.014758 at 20 °C, which with its ratio of molar masses
    // and its psat is f = 1.0041. Hyland and Wexler's f and Greenspan's are 0.0002 apart at most.
    [Fact]
    public void Greenspan_At20_IsWhatAshraeTabulates()
    {
        double ratio = 0.014758 / 0.62198;
        double factor = SeaLevelPa * ratio / (1 + ratio) / SaturationPressure.HylandWexlerWater(293.15);
        Near.Relative(factor, Greenspan(20), 2e-4);
    }

    [Theory]
    [InlineData(10, 35, 40, 0.01)]
    [InlineData(-20, 50, 5, 0.025)]
    public void DewPoint_WithoutIt_IsOffByNoMoreThanTheManualSays(int lowestC, int highestC, int driestPct, double limitC)
    {
        double worst = 0;
        for (int t = lowestC; t <= highestC; t += 5)
        {
            for (int humidityPct = driestPct; humidityPct <= 95; humidityPct += 5)
            {
                double vapourPa = humidityPct / 100.0 * SaturationPressure.OverWater(t);
                double realPa = vapourPa * Greenspan(t);
                double dewPointC = DewPoint.OverWater(vapourPa);
                for (int i = 0; i < 20; i++)
                {
                    dewPointC = DewPoint.OverWater(realPa / Greenspan(dewPointC));
                }

                worst = Math.Max(worst, Math.Abs(dewPointC - DewPoint.OverWater(vapourPa)));
            }
        }

        Assert.InRange(worst, limitC / 3, limitC);
    }

    private static double Greenspan(double t)
    {
        (double alpha, double logBeta) = t >= 0
            ? (3.53624e-4 + (t * (2.93228e-5 + (t * (2.61474e-7 + (t * 8.57538e-9))))),
                -10.7588 + (t * (6.32529e-2 + (t * (-2.53591e-4 + (t * 6.33784e-7))))))
            : (3.62183e-4 + (t * (2.60553e-5 + (t * (3.86501e-7 + (t * 3.82449e-9))))),
                -10.7604 + (t * (6.39725e-2 + (t * (-2.63416e-4 + (t * 1.67254e-6))))));
        double saturationPa = SaturationPressure.OverWater(t);
        return Math.Exp((alpha * (1 - (saturationPa / SeaLevelPa))) + (Math.Exp(logBeta) * ((SeaLevelPa / saturationPa) - 1)));
    }
}
