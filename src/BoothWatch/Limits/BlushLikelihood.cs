namespace BoothWatch.Limits;

/// <summary>How well a threshold agrees with how the coats came out.</summary>
/// <remarks>
/// A coat with margin m blushes with the chance Φ((t - m) / √(scatter² + s²)): probit with an error in m, which adds in quadrature
/// (Carroll, Ruppert, Stefanski and Crainiceanu, Measurement Error in Nonlinear Models, 2nd ed. 2006). A mark is wrong with the lapse
/// share ε either way: ε + (1 - 2ε) Φ (Wichmann and Hill 2001, doi:10.3758/BF03194544).
/// </remarks>
internal static class BlushLikelihood
{
    /// <summary>Chance that a coat blushes.</summary>
    /// <param name="marginC">Its margin, °C.</param>
    /// <param name="thresholdC">Threshold t, °C.</param>
    /// <param name="spreadC">√(scatter² + s²), °C, above 0.</param>
    public static double Chance(double marginC, double thresholdC, double spreadC) => NormalDistribution.QuickCdf((thresholdC - marginC) / spreadC);

    /// <summary>Logarithm of the likelihood of all coats.</summary>
    public static double Log(IEnumerable<LimitCoat> coats, double thresholdC, double scatterC, LimitRules rules)
    {
        double sum = 0;
        foreach (LimitCoat coat in coats)
        {
            double own = coat.OwnUncertaintyC(rules.ModelUncertaintyC);
            sum += Log(coat, thresholdC, Math.Sqrt((scatterC * scatterC) + (own * own)), rules.LapseShare);
        }

        return sum;
    }

    /// <summary>Logarithm of the likelihood of one coat.</summary>
    public static double Log(LimitCoat coat, double thresholdC, double spreadC, double lapseShare)
    {
        // The chance of what was marked, from its own tail, so that nothing cancels far out.
        double z = (thresholdC - coat.MarginC) / spreadC;
        double chance = NormalDistribution.QuickCdf(coat.Blushed ? z : -z);
        return Math.Log(lapseShare + ((1 - (2 * lapseShare)) * chance));
    }
}
