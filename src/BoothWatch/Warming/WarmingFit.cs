namespace BoothWatch.Warming;

/// <summary>How a piece warms towards the air, by its own trail.</summary>
/// <remarks>
/// A thin piece follows Newton's law, one exponential. The surface of a thick one first runs ahead of its middle, and who fits one exponential
/// to those minutes promises too much. So the trail is compared with the exact solutions of plane bodies of every Biot number and time constant
/// (<see cref="PlaneWallModes"/>), driven by the air as it was; each counts by how well it fits, and so do the offsets that the two sensors may
/// have. The time is the median of what they all say, its range the middle 95 %.
/// Weight of a solution: S^(-(n-1)/2), with the sum of squares S over the n parts, noise of unknown size, one free amplitude (Box and Tiao,
/// Bayesian Inference in Statistical Analysis, 2.4, from memory). What thickness and material make likely counts too (<see cref="BodyGuess"/>).
/// </remarks>
public sealed class WarmingFit
{
    /// <summary>Shortest trail, s. Own choice.</summary>
    public const double ShortestS = 180;

    /// <summary>Parts that the trail is cut into; the mean of each is one point, so that second-by-second noise counts once.</summary>
    public const int Parts = 12;

    /// <summary>So many parts must have data, one of the newest two among them.</summary>
    public const int FewestParts = 6;

    /// <summary>Least mean difference between air and piece, °C: below it nothing drives the warming.</summary>
    public const double LeastBelowAirC = 0.5;

    /// <summary>Least rise over the trail that counts as warming, °C: beyond the noise of an infrared sensor. Own choice.</summary>
    public const double LeastRiseC = 0.2;

    /// <summary>Trail after which a piece that does not warm is said not to, s. Own choice.</summary>
    public const double StillAfterS = 600;

    /// <summary>A piece that takes longer than this even at best is not warming, s. Own choice.</summary>
    public const double StillS = 4 * 3600;

    /// <summary>Rise over the trail, as a share of the difference to the air, that a piece shows which does warm, if slowly. Own choice.</summary>
    private const double SlowRiseShare = 0.03;

    private const double QuickestS = 30;
    private const double SlowestS = 40 * 3600;
    private const double Step = 1.05;

    /// <summary>What a part is off by however quiet the sensor is, °C: its digits, parts of unequal length.</summary>
    private const double FloorC = 0.02;

    /// <summary>What it is off by because no piece is a plane body in air of one speed, as a share of the difference to the air. Assumed.</summary>
    private const double FloorShare = 0.01;

    /// <summary>Solutions that weigh less than this share of the best do not count.</summary>
    private const double Negligible = 1e-4;

    // Three offsets that stand for a normal distribution: 0 and ±√3 standard deviations (Gauss and Hermite).
    private static readonly (double Deviations, double Weight)[] Offsets = [(-Math.Sqrt(3), 1.0 / 6), (0, 2.0 / 3), (Math.Sqrt(3), 1.0 / 6)];

    private readonly double _partS;
    private readonly double _sinceS;
    private readonly double _floorC;
    private readonly (int Part, double PieceC, double AirC)[] _parts;

    private WarmingFit(double partS, double sinceS, (int Part, double PieceC, double AirC)[] parts)
    {
        (_partS, _sinceS, _parts) = (partS, sinceS, parts);
        SpanS = partS * Parts;
        double belowAirC = parts.Average(part => part.AirC - part.PieceC);
        _floorC = FloorC + (FloorShare * belowAirC);
        int some = parts.Length / 4;
        RiseC = parts[^some..].Average(part => part.PieceC) - parts[..some].Average(part => part.PieceC);
        HasRisen = RiseC >= Math.Max(LeastRiseC, SlowRiseShare * belowAirC);
    }

    /// <summary>Length of the trail, s.</summary>
    public double SpanS { get; }

    /// <summary>By how much the piece has warmed from the first quarter of the trail to the last, °C.</summary>
    public double RiseC { get; }

    /// <summary>True where the piece has plainly warmed, however long it still takes: a heavy one may need the whole day.</summary>
    public bool HasRisen { get; }

    /// <summary>Takes a trail.</summary>
    /// <param name="points">The trail, oldest first.</param>
    /// <param name="nowS">The present on the same clock, s.</param>
    /// <returns>Null where the trail is too short, has gaps, is old, or nothing drives the warming.</returns>
    public static WarmingFit? Of(IReadOnlyList<WarmingPoint> points, double nowS)
    {
        ArgumentNullException.ThrowIfNull(points);
        double startS = points.Count == 0 ? nowS : points[0].AtS;
        double spanS = points.Count == 0 ? 0 : points[^1].AtS - startS;
        if (points.Count < FewestParts || spanS < ShortestS)
        {
            return null;
        }

        // A trail of few points, as of a compressed day, has its first point at the beginning of a part and not in its middle.
        double partS = spanS * points.Count / (points.Count - 1) / Parts;
        (int Part, double PieceC, double AirC)[] parts =
        [
            .. points
                .GroupBy(point => Math.Min(Parts - 1, (int)((point.AtS - startS) / partS)))
                .OrderBy(part => part.Key)
                .Select(part => (part.Key, part.Average(p => p.PieceC), part.Average(p => p.AirC))),
        ];
        bool isFresh = parts[^1].Part >= Parts - 2 && nowS - points[^1].AtS <= 2 * partS;
        return parts.Length >= FewestParts && isFresh && parts.Average(part => part.AirC - part.PieceC) >= LeastBelowAirC
            ? new WarmingFit(partS, nowS - startS - (partS * (Parts - 0.5)), parts)
            : null;
    }

    /// <summary>The time until the piece has a temperature, if the air stays as it is.</summary>
    /// <param name="airC">Air temperature now, °C.</param>
    /// <param name="targetC">Temperature to reach, °C.</param>
    /// <param name="offsetC">Standard uncertainty of the difference between the two sensors, °C: it moves the piece against the air.</param>
    /// <param name="guess">What thickness and material make likely; null: nothing. A trail that says otherwise wins.</param>
    /// <returns>Null where the trail shows no warming beyond its noise. A most that has no end is null, and a least beyond
    /// <see cref="StillS"/> of a piece that has not risen means that it does not warm.</returns>
    public WarmingTime? Until(double airC, double targetC, double offsetC, BodyGuess? guess = null)
    {
        List<(double Weight, double LeftS)> said = [];
        double best = 0;
        foreach (PlaneWallModes body in PlaneWallModes.All)
        {
            for (double constantS = QuickestS; constantS < SlowestS; constantS *= Step)
            {
                double prior = guess?.Likelihood(body.Biot, constantS) ?? 1;
                BodySolution solution = new(body, constantS, _parts, _partS, _sinceS, _floorC);
                foreach ((double deviations, double weight) in Offsets)
                {
                    double offset = deviations * offsetC;
                    double counts = prior * weight * solution.Likelihood(offset);
                    best = Math.Max(best, counts);
                    if (counts > Negligible * best)
                    {
                        said.Add((counts, solution.Until(airC - targetC + offset, offset)));
                    }
                }
            }
        }

        said.RemoveAll(one => one.Weight <= Negligible * best);
        said.Sort((one, other) => one.LeftS.CompareTo(other.LeftS));
        double all = said.Sum(one => one.Weight);
        double leastS = Quantile(said, 0.025 * all);
        double leftS = Quantile(said, 0.5 * all);
        double mostS = Quantile(said, 0.975 * all);
        bool isStill = SpanS >= StillAfterS && leastS > StillS && !HasRisen;
        return isStill ? new WarmingTime(leftS, leastS, null)
            : RiseC < LeastRiseC || !double.IsFinite(leftS) ? null
            : new WarmingTime(leftS, leastS, double.IsFinite(mostS) ? mostS : null);
    }

    private static double Quantile(List<(double Weight, double LeftS)> sorted, double weight)
    {
        double sum = 0;
        foreach ((double one, double leftS) in sorted)
        {
            sum += one;
            if (sum >= weight)
            {
                return leftS;
            }
        }

        return double.PositiveInfinity;
    }
}
