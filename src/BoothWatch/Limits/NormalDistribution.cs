namespace BoothWatch.Limits;

/// <summary>The normal distribution.</summary>
internal static class NormalDistribution
{
    /// <summary>Beyond this the series would need many terms; the continued fraction is at its best there.</summary>
    private const double SeriesUpTo = 4;
    private const int FractionTerms = 60;

    private const int TableEnd = 8;
    private const int StepsPerUnit = 512;
    private static readonly double[] Table = [.. Enumerable.Range(0, (2 * TableEnd * StepsPerUnit) + 1).Select(i => Cdf(((double)i / StepsPerUnit) - TableEnd))];

    /// <summary>As <see cref="Cdf"/> from a table: within 2e-7, rising, and 0 or 1 beyond 8. Ten times as fast.</summary>
    public static double QuickCdf(double z)
    {
        double place = (z + TableEnd) * StepsPerUnit;
        if (!(place > 0))
        {
            return double.IsNaN(z) ? double.NaN : 0;
        }

        if (place >= Table.Length - 1)
        {
            return 1;
        }

        int i = (int)place;
        return Table[i] + ((Table[i + 1] - Table[i]) * (place - i));
    }

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
