namespace BoothWatch.Outlook;

/// <summary>Whether one forecast beats another beyond chance, from the differences of their scores, one for each day.</summary>
/// <param name="Count">Days.</param>
/// <param name="Mean">Mean difference; below 0 the first forecast is better.</param>
/// <param name="StandardError">Standard error of the mean; larger where neighbouring days resemble each other. Infinite with fewer than two days.</param>
/// <remarks>
/// The test of Diebold and Mariano (Journal of Business and Economic Statistics 13 (1995) 253) with a day as the unit and Student's t instead of the
/// normal distribution, as Harvey, Leybourne and Newbold advise for few forecasts (International Journal of Forecasting 13 (1997) 281); both from
/// memory. For days that resemble each other the effective number n (1 - r1)/(1 + r1) takes the place of n, as in <see cref="StraightLine"/>.
/// </remarks>
public readonly record struct PairedDifference(int Count, double Mean, double StandardError)
{
    /// <summary>One-sided chance of a false win on one record of days that differ by chance alone. Own choice.</summary>
    public const double FalseWins = 0.025;

    /// <summary>True when the first forecast is better, beyond chance.</summary>
    public bool Wins => Count > 2 && Mean < 0 && Mean + (StudentT.Quantile(1 - FalseWins, Count - 1) * StandardError) < 0;

    /// <summary>The mean and what it is worth.</summary>
    /// <param name="differences">One for each day, in order of the days.</param>
    public static PairedDifference Of(IReadOnlyList<double> differences)
    {
        ArgumentNullException.ThrowIfNull(differences);
        int n = differences.Count;
        if (n < 2)
        {
            return new PairedDifference(n, n == 0 ? 0 : differences[0], double.PositiveInfinity);
        }

        double mean = differences.Average();
        double squares = differences.Sum(d => (d - mean) * (d - mean));
        double lag1 = squares > 0 ? differences.Zip(differences.Skip(1), (a, b) => (a - mean) * (b - mean)).Sum() / squares : 0;
        double worth = n * (1 - Math.Max(0, lag1)) / (1 + Math.Max(0, lag1));
        return new PairedDifference(n, mean, Math.Sqrt(squares / (n - 1) / worth));
    }
}
