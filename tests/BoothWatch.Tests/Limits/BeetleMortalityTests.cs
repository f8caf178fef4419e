using BoothWatch.Limits;

namespace BoothWatch.Tests.Limits;

/// <summary>
/// Against a published probit fit: deaths of flour beetles over the logarithm of the dose of carbon disulphide, Bliss (1935), The calculation
/// of the dosage-mortality curve, Annals of Applied Biology 22, 134. Maximum likelihood estimates: intercept -34.935 (standard error 2.648),
/// slope 19.728 (1.487), as in Dobson, An Introduction to Generalized Linear Models, table 7.4. Data and estimates are from memory.
/// </summary>
public class BeetleMortalityTests
{
    private const double Intercept = -34.935;
    private const double Slope = 19.728;

    /// <summary>A dose is no margin: more of it kills, so it is turned round, and stretched to the size of degrees.</summary>
    private const double CentreDose = 1.78;
    private const double Stretch = 20;

    private static readonly (double Dose, int Beetles, int Dead)[] Bliss =
    [
        (1.6907, 59, 6), (1.7242, 60, 13), (1.7552, 62, 18), (1.7842, 56, 28), (1.8113, 63, 52), (1.8369, 59, 53), (1.8610, 62, 61), (1.8839, 60, 60),
    ];

    private static readonly LimitCoat[] Beetles =
    [
        .. Bliss.SelectMany(group => Enumerable.Range(0, group.Beetles).Select(i =>
            new LimitCoat(i, new DateOnly(1935, 1, 1), Stretch * (CentreDose - group.Dose), 0, i < group.Dead))),
    ];

    private static readonly double MedianDoseC = Stretch * (CentreDose + (Intercept / Slope));
    private static readonly double SpreadC = Stretch / Slope;

    // No lapses, no error in the dose, and a prior fifteen times as wide as what the beetles say: it moves nothing.
    private static readonly LimitRules Flat = new() { LapseShare = 0, ModelUncertaintyC = 0, PriorSdC = 1, ScattersC = [SpreadC] };

    [Fact]
    public void Likelihood_OnAGrid_IsHighestAtThePublishedEstimates()
    {
        (double thresholdC, double scatterC) = (0, 0);
        double best = double.NegativeInfinity;
        for (double t = 0; t <= 0.4; t += 0.005)
        {
            for (double s = 0.9; s <= 1.15; s += 0.005)
            {
                double log = BlushLikelihood.Log(Beetles, t, s, Flat);
                (best, thresholdC, scatterC) = log > best ? (log, t, s) : (best, thresholdC, scatterC);
            }
        }

        Assert.InRange(thresholdC, MedianDoseC - 0.006, MedianDoseC + 0.006);
        Assert.InRange(Stretch / scatterC, Slope - 0.12, Slope + 0.12);
    }

    [Fact]
    public void Posterior_WithAFlatPrior_LiesAtThePublishedMedianDose()
    {
        ThresholdPosterior posterior = new(Beetles, Flat);
        Assert.InRange(posterior.ThresholdC(0.5), MedianDoseC - 0.01, MedianDoseC + 0.01);

        // With the spread held, the information about the median dose is the sum of n φ²/(Φ(1-Φ)) over spread squared (Finney, Probit Analysis).
        double information = Bliss.Sum(group =>
        {
            double z = Intercept + (Slope * group.Dose);
            double density = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
            double dead = NormalDistribution.Cdf(z);
            return group.Beetles * density * density / (dead * (1 - dead));
        }) / (SpreadC * SpreadC);
        double halfWidth = (posterior.Threshold.HighC - posterior.Threshold.LowC) / 2;
        Assert.InRange(halfWidth * Math.Sqrt(information) / 1.645, 0.95, 1.05);
    }
}
