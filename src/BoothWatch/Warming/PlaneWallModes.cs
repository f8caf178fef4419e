namespace BoothWatch.Warming;

/// <summary>How the surface of a plane body follows the air: a sum of decays whose ratios depend on its Biot number alone.</summary>
/// <param name="Biot">Biot number, h L / k: how much heat transfer outdoes conduction; 0: the body warms as one.</param>
/// <param name="RateRatio">Rate of each decay over that of the slowest, which is 1.</param>
/// <param name="Share">Share of each in the difference between air and surface of a body that was uniform; what is missing to 1 decays at once.</param>
/// <remarks>
/// Exact solution of the plane wall with convection: shares Cn cos ζn, rates as ζn², ζn tan ζn = Bi, Cn = 4 sin ζn / (2 ζn + sin 2ζn).
/// Incropera and others, Fundamentals of Heat and Mass Transfer, 6th edition, equation 5.39; Carslaw and Jaeger, Conduction of Heat in Solids, 3.11.
/// </remarks>
internal sealed record PlaneWallModes(double Biot, double[] RateRatio, double[] Share)
{
    /// <summary>More decays than this change nothing that is seen.</summary>
    private const int Count = 5;

    /// <summary>From a body that warms as one to a very thick one.</summary>
    public static PlaneWallModes[] All { get; } = [.. new[] { 0, 0.25, 0.5, 1, 2, 4, 8 }.Select(Of)];

    private static PlaneWallModes Of(double biot)
    {
        if (biot <= 0)
        {
            return new PlaneWallModes(0, [1], [1]);
        }

        double[] roots = [.. Enumerable.Range(0, Count).Select(n => Root(biot, n))];
        return new PlaneWallModes(
            biot,
            [.. roots.Select(root => root * root / (roots[0] * roots[0]))],
            [.. roots.Select(root => 4 * Math.Sin(root) * Math.Cos(root) / ((2 * root) + Math.Sin(2 * root)))]);
    }

    /// <summary>The root number n of ζ tan ζ = Bi, from 0 on.</summary>
    /// <remarks>ζ = n π + atan(Bi / ζ), of which every second guess lies on the other side, so that their mean goes there.</remarks>
    internal static double Root(double biot, int n)
    {
        double root = (n * Math.PI) + (Math.PI / 4);
        for (int i = 0; i < 200; i++)
        {
            root = (root + (n * Math.PI) + Math.Atan(biot / root)) / 2;
        }

        return root;
    }
}
