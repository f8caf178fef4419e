namespace BoothWatch.Warming;

/// <summary>One body of one time constant against the trail.</summary>
internal readonly ref struct BodySolution
{
    /// <summary>
    /// The trail begins when the piece is brought in, or a little later. So a body that would have had to be far colder shortly before the
    /// trail began is unlikely: standard deviation of the logarithm of what its surface had already lost. Own choice.
    /// </summary>
    private const double BegunSpread = 0.3;

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

    /// <summary>Compares the body with the trail.</summary>
    /// <param name="body">How its surface follows the air.</param>
    /// <param name="constantS">Time constant of its slowest decay, s.</param>
    /// <param name="trail">Number, piece and air of each part of the trail that has data, °C.</param>
    /// <param name="partS">Length of a part, s.</param>
    /// <param name="sinceS">From the middle of the last of all parts to now, s.</param>
    /// <param name="floorC">What a part is off by however quiet the sensor is, °C.</param>
    public BodySolution(PlaneWallModes body, double constantS, (int Part, double PieceC, double AirC)[] trail, double partS, double sinceS, double floorC)
    {
        int modes = body.Share.Length;
        _floorC = floorC;
        _rate = new double[modes];
        _free = new double[modes];
        _driven = new double[modes];
        Span<double> decay = stackalloc double[modes];
        Span<double> mean = stackalloc double[modes];
        for (int m = 0; m < modes; m++)
        {
            _rate[m] = body.RateRatio[m] / constantS;
            double x = _rate[m] * partS;
            decay[m] = Math.Exp(-x);
            mean[m] = (1 - decay[m]) / x; // of the decay over a part
            _free[m] = body.Share[m];
        }

        // The free course is that of a body uniform at the start; what the air did meanwhile drives each decay.
        int at = 0;
        double airC = trail[0].AirC;
        foreach ((int part, double pieceC, double partAirC) in trail)
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
        double leftParts = WarmingFit.Parts - 1 - at;
        for (int m = 0; m < modes; m++)
        {
            _free[m] *= Math.Exp(-_rate[m] * (((leftParts + 0.5) * partS) + sinceS));
            _driven[m] *= Math.Exp(-_rate[m] * ((leftParts * partS) + sinceS));
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
