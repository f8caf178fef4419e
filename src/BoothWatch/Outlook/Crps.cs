namespace BoothWatch.Outlook;

/// <summary>The continuous ranked probability score: how far a band of equally likely values was from what came, in the unit of the values. Less is better.</summary>
/// <remarks>
/// CRPS = mean |x - y| - (1/2) mean |x - x'| over the members x, x' and the outcome y; for one member it is the absolute error. It equals twice
/// the pinball loss averaged over all quantiles. Gneiting and Raftery, Journal of the American Statistical Association 102 (2007) 359, equation (21).
/// </remarks>
public static class Crps
{
    /// <summary>The score.</summary>
    /// <param name="members">Members in any order, one or more. Sorted in place.</param>
    /// <param name="outcome">What came.</param>
    public static double Of(double[] members, double outcome)
    {
        ArgumentNullException.ThrowIfNull(members);
        Array.Sort(members);
        int n = members.Length;
        double distance = 0;
        double spread = 0;
        for (int i = 0; i < n; i++)
        {
            distance += Math.Abs(members[i] - outcome);
            spread += ((2 * i) + 1 - n) * members[i];
        }

        return (distance / n) - (spread / ((double)n * n));
    }
}
