namespace BoothWatch.Tests.Warming;

/// <summary>
/// The exact solution of a plane wall of half thickness L that is put into air of another temperature: with Bi = h L / k and Fo = α t / L²,
/// (T - Tair)/(T0 - Tair) = Σ Cn exp(-ζn² Fo) cos(ζn x/L), ζn tan ζn = Bi, Cn = 4 sin ζn / (2 ζn + sin 2ζn).
/// Incropera and others, Fundamentals of Heat and Mass Transfer, 6th edition, equation 5.39; Carslaw and Jaeger, Conduction of Heat in Solids, 3.11.
/// </summary>
internal static class PlaneWall
{
    /// <summary>Share of the first difference that is left.</summary>
    /// <param name="biot">Biot number.</param>
    /// <param name="fourier">Fourier number.</param>
    /// <param name="place">0 in the middle, 1 at the face.</param>
    public static double Left(double biot, double fourier, double place) => Enumerable.Range(0, 60).Sum(n =>
    {
        double zeta = Root(biot, n);
        return 4 * Math.Sin(zeta) / ((2 * zeta) + Math.Sin(2 * zeta)) * Math.Exp(-zeta * zeta * fourier) * Math.Cos(zeta * place);
    });

    /// <summary>The root number n of ζ tan ζ = Bi, by bisection between n π and n π + π/2.</summary>
    public static double Root(double biot, int n)
    {
        (double low, double high) = (n * Math.PI, (n + 0.5) * Math.PI);
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = (middle * Math.Sin(middle)) - (biot * Math.Cos(middle)) < 0 == (n % 2 == 0) ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
