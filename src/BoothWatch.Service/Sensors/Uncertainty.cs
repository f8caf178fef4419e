namespace BoothWatch.Service.Sensors;

/// <summary>Turns what data sheets state into standard uncertainties.</summary>
internal static class Uncertainty
{
    /// <summary>
    /// Standard uncertainty (k = 1) of independent tolerances, each the half-width of a rectangular distribution:
    /// the root of the sum of squares, divided by the root of 3.
    /// </summary>
    /// <remarks>Source: JCGM 100:2008 (GUM), 4.3.7 and 5.1.2.</remarks>
    public static double FromTolerances(params ReadOnlySpan<double> halfWidths)
    {
        double sum = 0;
        foreach (double halfWidth in halfWidths)
        {
            sum += halfWidth * halfWidth;
        }

        return Math.Sqrt(sum / 3);
    }
}
