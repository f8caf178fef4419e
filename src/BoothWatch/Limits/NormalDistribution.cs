namespace BoothWatch.Limits;

/// <summary>The normal distribution.</summary>
internal static class NormalDistribution
{
    /// <summary>Beyond this the series would need many terms; the continued fraction is at its best there.</summary>
    private const double SeriesUpTo = 4;
    private const int FractionTerms = 60;

    /// <summary>Share of the standard normal distribution below <paramref name="z"/>; relative error below 1e-9 in the lower tail too.</summary>
    /// <remarks>
    /// Up to 4 by the series Φ(z) = 1/2 + φ(z) (z + z³/3 + z⁵/(3·5) + ...), NIST Digital Library of Mathematical Functions 7.6.2;
    /// beyond by the continued fraction of the tail φ(z) / (z + 1/(z + 2/(z + 3/(z + ...)))), the same, 7.9.
    /// </remarks>
    public static double Cdf(double z)
    {
        if (double.IsNaN(z))
        {
            return double.NaN;
        }

        double size = Math.Abs(z);
        if (size >= SeriesUpTo)
        {
            double tail = Tail(size);
            return z < 0 ? tail : 1 - tail;
        }

        double term = size;
        double sum = size;
        for (int odd = 3; term > sum * 1e-17; odd += 2)
        {
            term *= size * size / odd;
            sum += term;
        }

        double half = Density(size) * sum;
        return z < 0 ? 0.5 - half : 0.5 + half;
    }

    private static double Tail(double z)
    {
        double fraction = z;
        for (int k = FractionTerms; k >= 1; k--)
        {
            fraction = z + (k / fraction);
        }

        return Density(z) / fraction;
    }

    private static double Density(double z) => Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
}
