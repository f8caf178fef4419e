namespace BoothWatch.Limits;

/// <summary>A figure that is known only roughly: in the band with 90 % probability, above and below it with 5 % each.</summary>
/// <param name="LowC">Lower end, °C.</param>
/// <param name="LikelyC">Median, °C.</param>
/// <param name="HighC">Upper end, °C.</param>
public sealed record CredibleBand(double LowC, double LikelyC, double HighC)
{
    /// <summary>Probability below the lower end, and above the upper one.</summary>
    public const double Outside = 0.05;
}
