namespace BoothWatch.Outlook;

/// <summary>The straight line of least squares through points, with what its slope is worth.</summary>
/// <param name="Slope">Slope, units of y a unit of x.</param>
/// <param name="Intercept">y at x = 0.</param>
/// <param name="SlopeError">Standard error of the slope, as if the residuals were independent.</param>
/// <param name="AdjustedSlopeError">
/// Standard error of the slope when neighbouring residuals resemble each other, as those of a drifting room do; positive infinity where the
/// points are worth no more than two independent ones.
/// </param>
/// <remarks>
/// Slope and standard error: the textbook formulas, b = Sxy/Sxx and s(b)² = (Σ r²/(n - 2))/Sxx.
/// Adjustment: the effective number of points is n' = n (1 - r1)/(1 + r1), with the lag-1 autocorrelation r1 of the residuals where it is
/// positive, and the variance of the residuals is divided by n' - 2 instead of n - 2. Santer et al., Journal of Geophysical Research 105
/// (2000) 7337, section 4 (from memory).
/// </remarks>
public readonly record struct StraightLine(double Slope, double Intercept, double SlopeError, double AdjustedSlopeError)
{
    /// <summary>Least number of points: two make a line, the third says what it is worth.</summary>
    public const int FewestPoints = 3;

    /// <summary>Residuals whose squares are below this share of those of y are rounding, and no noise that could resemble itself.</summary>
    private const double RoundingShare = 1e-18;

    /// <summary>The value of the line.</summary>
    public double At(double x) => Intercept + (Slope * x);

    /// <summary>Fits the line.</summary>
    /// <param name="x">The points' x, not all equal, in order.</param>
    /// <param name="y">The points' y.</param>
    /// <exception cref="ArgumentException">Fewer than <see cref="FewestPoints"/>, not as many y as x, or every x the same.</exception>
    public static StraightLine Through(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        int n = x.Count;
        if (n < FewestPoints || y.Count != n)
        {
            throw new ArgumentException($"A line with an error takes {FewestPoints} points or more, x and y of each; given were {n} x and {y.Count} y.", nameof(y));
        }

        double meanX = x.Average();
        double meanY = y.Average();
        double sxx = x.Sum(v => (v - meanX) * (v - meanX));
        if (!(sxx > 0))
        {
            throw new ArgumentException("Every x is the same; a line takes two.", nameof(x));
        }

        double slope = Enumerable.Range(0, n).Sum(i => (x[i] - meanX) * (y[i] - meanY)) / sxx;
        double intercept = meanY - (slope * meanX);
        double[] residuals = [.. Enumerable.Range(0, n).Select(i => y[i] - intercept - (slope * x[i]))];
        double squares = residuals.Sum(r => r * r);
        double error = Math.Sqrt(squares / (n - 2) / sxx);
        bool isExact = squares <= RoundingShare * y.Sum(v => (v - meanY) * (v - meanY));
        return new StraightLine(slope, intercept, error, Adjusted(error, n, isExact ? 0 : Lag1(residuals, squares)));
    }

    private static double Lag1(double[] residuals, double squares) =>
        residuals.Zip(residuals.Skip(1), (a, b) => a * b).Sum() / squares;

    private static double Adjusted(double error, int n, double lag1)
    {
        if (!(lag1 > 0))
        {
            return error;
        }

        double worth = n * (1 - lag1) / (1 + lag1);
        return worth > 2 ? error * Math.Sqrt((n - 2) / (worth - 2)) : double.PositiveInfinity;
    }
}
