namespace BoothWatch.Outlook;

/// <summary>How fast the humidity of the booth went over to that of the air drawn in, after one step: the fan switched on or off, or a step outdoors.</summary>
/// <param name="ChangesPerH">Effective air changes, 1/h. Wood and dust take up water and give it back, so that this is less than the fan alone would make.</param>
/// <param name="LogError">Standard error of its natural logarithm.</param>
/// <param name="ExcessRatio">Humidity ratio by which the booth stays above the intake (people, wet film), kg/kg.</param>
/// <remarks>
/// The well-mixed room: dW/dt = n (Win + g - W), with the humidity ratios W of the booth and Win of the intake (kg/kg), the excess g and n in 1/h;
/// with constant Win it is the exponential decay of a tracer, W - Win - g = (W0 - Win - g) exp(-n t), as ASTM E741 uses it (from memory). For a
/// given n the equation is linear in W0 and g, which follow by least squares; n is then found by the golden section on its logarithm between
/// <see cref="LeastPerH"/> and <see cref="MostPerH"/>, to 1e-4, in <see cref="Iterations"/> steps.
/// </remarks>
public sealed record RoomFit(double ChangesPerH, double LogError, double ExcessRatio)
{
    /// <summary>Least changes an hour that are looked for.</summary>
    public const double LeastPerH = 0.1;

    /// <summary>Most.</summary>
    public const double MostPerH = 60;

    /// <summary>Points a fit needs, a minute each.</summary>
    public const int FewestPoints = 12;

    /// <summary>The booth must have begun so far from where it went, kg/kg: less is within what humidity sensors differ by. Own choice.</summary>
    public const double LeastStepRatio = 0.0004;

    /// <summary>Largest standard error of the logarithm that is taken. Own choice.</summary>
    public const double MostLogError = 0.35;

    private const int Iterations = 40;
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    /// <summary>The fit; null where the points are too few, the step too small, or the answer too unsure.</summary>
    /// <param name="points">Minutes after the step: hours on any clock, humidity ratio of booth and intake, kg/kg; in order of time.</param>
    public static RoomFit? Of(IReadOnlyList<RoomPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < FewestPoints)
        {
            return null;
        }

        (double low, double high) = (Math.Log(LeastPerH), Math.Log(MostPerH));
        (double a, double b) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
        (double atA, double atB) = (Solve(points, Math.Exp(a)).Squares, Solve(points, Math.Exp(b)).Squares);
        for (int i = 0; i < Iterations; i++)
        {
            if (atA < atB)
            {
                (high, b, atB) = (b, a, atA);
                a = high - (Golden * (high - low));
                atA = Solve(points, Math.Exp(a)).Squares;
            }
            else
            {
                (low, a, atA) = (a, b, atB);
                b = low + (Golden * (high - low));
                atB = Solve(points, Math.Exp(b)).Squares;
            }
        }

        double log = (low + high) / 2;
        Solution best = Solve(points, Math.Exp(log));
        bool isAtTheEdge = log < Math.Log(LeastPerH) + 0.05 || log > Math.Log(MostPerH) - 0.05;
        double error = LogErrorOf(points, log, best.Squares);
        bool isStep = Math.Abs(best.FirstRatio - points[0].IntakeRatio - best.ExcessRatio) >= LeastStepRatio;
        return isAtTheEdge || !isStep || !(error <= MostLogError) ? null : new RoomFit(Math.Exp(log), error, best.ExcessRatio);
    }

    // From the curvature of the sum of squares, with three parameters taken from the points.
    private static double LogErrorOf(IReadOnlyList<RoomPoint> points, double log, double squares)
    {
        const double H = 0.05;
        double curvature = (Solve(points, Math.Exp(log + H)).Squares + Solve(points, Math.Exp(log - H)).Squares - (2 * squares)) / (H * H);
        return curvature > 0 ? Math.Sqrt(2 * squares / (points.Count - 3) / curvature) : double.PositiveInfinity;
    }

    private static Solution Solve(IReadOnlyList<RoomPoint> points, double changesPerH)
    {
        // W = W0 p + g (1 - p) + f: p what is left of the start, f what the intake has brought; f is carried along minute by minute.
        (double pp, double pq, double qq, double py, double qy, double yy) = (0, 0, 0, 0, 0, 0);
        (double left, double brought) = (1, 0);
        for (int i = 0; i < points.Count; i++)
        {
            if (i > 0)
            {
                double decay = Math.Exp(-changesPerH * (points[i].AtH - points[i - 1].AtH));
                left *= decay;
                brought = (brought * decay) + ((points[i].IntakeRatio + points[i - 1].IntakeRatio) / 2 * (1 - decay));
            }

            double y = points[i].BoothRatio - brought;
            double q = 1 - left;
            (pp, pq, qq, py, qy, yy) = (pp + (left * left), pq + (left * q), qq + (q * q), py + (left * y), qy + (q * y), yy + (y * y));
        }

        double determinant = (pp * qq) - (pq * pq);
        if (!(determinant > 1e-9))
        {
            return new Solution(points[0].BoothRatio, 0, double.MaxValue);
        }

        double first = ((py * qq) - (qy * pq)) / determinant;
        double excess = ((qy * pp) - (py * pq)) / determinant;
        return new Solution(first, excess, Math.Max(0, yy - (first * py) - (excess * qy)));
    }

    private readonly record struct Solution(double FirstRatio, double ExcessRatio, double Squares);
}
