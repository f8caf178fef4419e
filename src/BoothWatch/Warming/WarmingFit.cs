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

    private const double QuickestS = 30;
    private const double SlowestS = 40 * 3600;
    private const double Step = 1.05;

    /// <summary>What a part is off by however quiet the sensor is, °C: its digits, parts of unequal length.</summary>
    private const double FloorC = 0.02;

    /// <summary>What it is off by because no piece is a plane body in air of one speed, as a share of the difference to the air. Assumed.</summary>
    private const double FloorShare = 0.01;

    /// <summary>
    /// The trail begins when the piece is brought in, or a little later. So a body that would have had to be far colder shortly before the
    /// trail began is unlikely: standard deviation of the logarithm of what its surface had already lost. Own choice.
    /// </summary>
    private const double BegunSpread = 0.3;

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
        _floorC = FloorC + (FloorShare * parts.Average(part => part.AirC - part.PieceC));
        int some = parts.Length / 4;
        RiseC = parts[^some..].Average(part => part.PieceC) - parts[..some].Average(part => part.PieceC);
    }

    /// <summary>Length of the trail, s.</summary>
    public double SpanS { get; }

    /// <summary>By how much the piece has warmed from the first quarter of the trail to the last, °C.</summary>
    public double RiseC { get; }

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
    /// <see cref="StillS"/> means that the piece does not warm.</returns>
    public WarmingTime? Until(double airC, double targetC, double offsetC, BodyGuess? guess = null)
    {
        List<(double Weight, double LeftS)> said = [];
        double best = 0;
        foreach (PlaneWallModes body in PlaneWallModes.All)
        {
            for (double constantS = QuickestS; constantS < SlowestS; constantS *= Step)
            {
                double prior = guess?.Likelihood(body.Biot, constantS) ?? 1;
                Solution solution = new(body, constantS, this);
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
        bool isStill = SpanS >= StillAfterS && leastS > StillS;
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

    /// <summary>One body of one time constant against the trail.</summary>
    private readonly ref struct Solution
    {
        private readonly double[] _rate;
        private readonly double[] _free;
        private readonly double[] _driven;
        private readonly double _floorC;
        private readonly double _begun;
        private readonly double _n;
        private readonly double _sumF;
        private readonly double _sumFf;
        private readonly double _sumFy;
        private readonly double _sumY;
        private readonly double _sumYy;

        public Solution(PlaneWallModes body, double constantS, WarmingFit fit)
        {
            int modes = body.Share.Length;
            _floorC = fit._floorC;
            _rate = new double[modes];
            _free = new double[modes];
            _driven = new double[modes];
            Span<double> decay = stackalloc double[modes];
            Span<double> mean = stackalloc double[modes];
            for (int m = 0; m < modes; m++)
            {
                _rate[m] = body.RateRatio[m] / constantS;
                double x = _rate[m] * fit._partS;
                decay[m] = Math.Exp(-x);
                mean[m] = (1 - decay[m]) / x; // of the decay over a part
                _free[m] = body.Share[m];
            }

            // The free course is that of a body uniform at the start; what the air did meanwhile drives each decay.
            int at = 0;
            double airC = fit._parts[0].AirC;
            foreach ((int part, double pieceC, double partAirC) in fit._parts)
            {
                int parts = part - at;
                for (int i = 0; i < parts; i++)
                {
                    for (int m = 0; m < modes; m++)
                    {
                        _free[m] *= decay[m];
                        _driven[m] = (_driven[m] * decay[m]) + (body.Share[m] * (partAirC - airC) / parts * mean[m]);
                    }
                }

                (at, airC) = (part, partAirC);
                double free = 0;
                double driven = 0;
                for (int m = 0; m < modes; m++)
                {
                    free += _free[m] * mean[m];
                    driven += _driven[m];
                }

                if (_n == 0)
                {
                    double gone = Math.Log(free) / BegunSpread;
                    _begun = Math.Exp(-gone * gone / 2);
                }

                double y = partAirC - pieceC - driven;
                _n++;
                _sumF += free;
                _sumFf += free * free;
                _sumFy += free * y;
                _sumY += y;
                _sumYy += y * y;
            }

            // From the beginning of the last part, where the free course stands, to now; the driven one stands in its middle.
            double leftParts = Parts - 1 - at;
            for (int m = 0; m < modes; m++)
            {
                _free[m] *= Math.Exp(-_rate[m] * (((leftParts + 0.5) * fit._partS) + fit._sinceS));
                _driven[m] *= Math.Exp(-_rate[m] * ((leftParts * fit._partS) + fit._sinceS));
            }
        }

        /// <summary>Its weight, if the piece reads too warm by the offset.</summary>
        public double Likelihood(double offset)
        {
            double fy = _sumFy + (offset * _sumF);
            double squares = _sumYy + (2 * offset * _sumY) + (_n * offset * offset) - (fy * fy / _sumFf);
            return Math.Pow((Math.Max(0, squares) + (_n * _floorC * _floorC)) / _n, -(_n - 1) / 2) * _begun;
        }

        /// <summary>When the difference to the air falls to this, s; positive infinity where it never does.</summary>
        public double Until(double differenceC, double offset)
        {
            double amplitude = (_sumFy + (offset * _sumF)) / _sumFf;
            if (!(differenceC > 0))
            {
                return double.PositiveInfinity;
            }

            if (Difference(amplitude, 0) <= differenceC)
            {
                return 0;
            }

            (double low, double high) = (0, 1 / _rate[0]);
            while (Difference(amplitude, high) > differenceC)
            {
                (low, high) = (high, 2 * high);
            }

            for (int i = 0; i < 20; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = Difference(amplitude, middle) > differenceC ? (middle, high) : (low, middle);
            }

            return (low + high) / 2;
        }

        private double Difference(double amplitude, double afterS)
        {
            double difference = 0;
            for (int m = 0; m < _rate.Length; m++)
            {
                difference += ((amplitude * _free[m]) + _driven[m]) * Math.Exp(-_rate[m] * afterS);
            }

            return difference;
        }
    }
}
