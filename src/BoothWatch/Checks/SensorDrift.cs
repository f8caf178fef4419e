namespace BoothWatch.Checks;

/// <summary>How the deviation of a sensor has moved from check to check.</summary>
/// <remarks>
/// A straight line through the deviations over one salt, weighted by their uncertainties: slope S = Σw(t - t̄)(d - d̄) / Σw(t - t̄)²,
/// u(S) = 1/√Σw(t - t̄)², w = 1/u². The uncertainties count as independent, though the salt is the same each time: so u(S) is rather
/// too large. Results over different salts are not mixed, because a part is off by a different amount at each humidity.
/// </remarks>
/// <param name="Salt">Id of the salt that it was found over.</param>
/// <param name="PctPerYear">Change of the deviation, % of relative humidity a year.</param>
/// <param name="ExpandedUncertaintyPct">Expanded uncertainty (k = 2) of it, % of relative humidity a year.</param>
public sealed record SensorDrift(string Salt, double PctPerYear, double ExpandedUncertaintyPct)
{
    /// <summary>Checks closer together than this say nothing of a year.</summary>
    public static readonly TimeSpan ShortestSpan = TimeSpan.FromDays(30);

    internal const double DaysPerYear = 365.25;

    /// <summary>True when it is more than its own uncertainty.</summary>
    public bool IsSignificant => Math.Abs(PctPerYear) > ExpandedUncertaintyPct;

    /// <summary>The drift over the salt with the longest history; null where no salt has two checks <see cref="ShortestSpan"/> apart.</summary>
    /// <param name="results">The results of one sensor, in any order.</param>
    public static SensorDrift? Of(IEnumerable<DatedResult> results) => results
        .GroupBy(dated => dated.Result.Salt)
        .Select(group => (Salt: group.Key, Results: group.ToArray()))
        .Select(group => (group.Salt, group.Results, Span: group.Results.Max(dated => dated.At) - group.Results.Min(dated => dated.At)))
        .Where(group => group.Span >= ShortestSpan)
        .OrderByDescending(group => group.Span)
        .Select(group => Fit(group.Salt, group.Results))
        .FirstOrDefault();

    private static SensorDrift Fit(string salt, DatedResult[] results)
    {
        DateTimeOffset start = results[0].At;
        (double Year, double Deviation, double Weight)[] points =
        [
            .. results.Select(dated =>
            {
                double standard = dated.Result.ExpandedUncertaintyPct / 2;
                return ((dated.At - start).TotalDays / DaysPerYear, dated.Result.DeviationPct, 1 / (standard * standard));
            }),
        ];
        double weights = points.Sum(point => point.Weight);
        double meanYear = points.Sum(point => point.Weight * point.Year) / weights;
        double meanDeviation = points.Sum(point => point.Weight * point.Deviation) / weights;
        double spread = points.Sum(point => point.Weight * (point.Year - meanYear) * (point.Year - meanYear));
        double slope = points.Sum(point => point.Weight * (point.Year - meanYear) * (point.Deviation - meanDeviation)) / spread;
        return new SensorDrift(salt, slope, 2 / Math.Sqrt(spread));
    }
}
