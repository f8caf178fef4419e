using BoothWatch.Readings;

namespace BoothWatch.Warming;

/// <summary>
/// What the last minutes measured of one and the same piece. A reading that jumps is set aside: if it goes back, a hand or a gun was in
/// front of the sensor; if it stays, another piece is there, and a new trail begins.
/// </summary>
/// <param name="speed">Seconds of the shop in a second of the clock: 1, or more where a scripted day is compressed.</param>
/// <remarks>Not safe for several threads.</remarks>
public sealed class WarmingTrail(double speed = 1)
{
    /// <summary>How far back it goes.</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(20);

    /// <summary>A change beyond what warming explains that counts as a jump, °C. Own choice: ten times the noise of an infrared sensor.</summary>
    public const double JumpC = 2;

    /// <summary>
    /// How long a jump must stay before it is another piece, s. Own choice. A value that comes so long after the one before it, or stands for so
    /// long, by the clock, was typed in: no hand passes before that.
    /// </summary>
    public const double SwapAfterS = 30;

    private const int SwapPoints = 3;

    /// <summary>Answers closer together than this, s of the clock, are one measurement told twice.</summary>
    private const double SameMeasurementS = 0.2;

    /// <summary>Time constant of the thinnest piece that is believed, s: a steel panel in a draught.</summary>
    private const double QuickestS = 60;

    private readonly List<WarmingPoint> _points = [];
    private readonly List<WarmingPoint> _jumped = [];
    private double _lastAtS = double.NegativeInfinity;

    /// <summary>The points, oldest first.</summary>
    public IReadOnlyList<WarmingPoint> Points => _points;

    /// <summary>The present, s of the shop, on the clock of the points.</summary>
    public double NowS { get; private set; }

    /// <summary>Seconds of the shop in a second of the clock.</summary>
    public double Speed => speed;

    /// <summary>True while the reading has jumped and it is not known yet what is in front of the sensor.</summary>
    public bool IsUnsettled => _jumped.Count > 0;

    /// <summary>Takes what a snapshot says of the piece and the air; a value that was taken before changes nothing.</summary>
    /// <param name="snapshot">The snapshot.</param>
    /// <param name="elapsed">Its time on a monotonic clock.</param>
    public void Take(BoothSnapshot snapshot, TimeSpan elapsed)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        NowS = elapsed.TotalSeconds * speed;
        Reading piece = snapshot[Quantity.PieceTemperature];
        Reading air = snapshot[Quantity.BoothTemperature];
        double atS = NowS - (piece.Age.TotalSeconds * speed);
        if (IsUnsettled && piece.IsGood && piece.Age.TotalSeconds >= SwapAfterS)
        {
            BeginAnew();
        }

        if (piece is { IsGood: true, Value: double pieceC } && air is { IsGood: true, Value: double airC }
            && double.IsFinite(pieceC) && double.IsFinite(airC) && atS - _lastAtS >= SameMeasurementS * speed)
        {
            bool isApart = atS - _lastAtS >= SwapAfterS * speed;
            _lastAtS = atS;
            Add(new WarmingPoint(atS, pieceC, airC), isApart);
        }
    }

    /// <summary>What the trail says of the warming; null where it is too short, has gaps, or the air is no warmer than the piece.</summary>
    public WarmingFit? Fit() => IsUnsettled ? null : WarmingFit.Of(_points, NowS);

    /// <summary>Time since the piece was last colder than this, s; null where it was not, as far back as the trail goes.</summary>
    public double? SinceBelowS(double temperatureC)
    {
        int last = _points.FindLastIndex(point => point.PieceC < temperatureC);
        return last < 0 ? null : NowS - _points[last].AtS;
    }

    private void Add(WarmingPoint point, bool isApart)
    {
        if (_points.Count > 0 && point.AtS - _points[^1].AtS > Window.TotalSeconds)
        {
            _points.Clear();
            _jumped.Clear();
        }

        if (_points.Count == 0 || Follows(_points[^1], point))
        {
            _jumped.Clear();
            _points.Add(point);
        }
        else
        {
            SetAside(point, isApart);
        }

        _points.RemoveAll(old => old.AtS < point.AtS - Window.TotalSeconds);
    }

    private void SetAside(WarmingPoint point, bool isApart)
    {
        if (_jumped.Count > 0 && (isApart || !Follows(_jumped[^1], point)))
        {
            _jumped.Clear();
        }

        _jumped.Add(point);
        if (isApart || (_jumped.Count >= SwapPoints && point.AtS - _jumped[0].AtS >= SwapAfterS))
        {
            BeginAnew();
        }
    }

    private void BeginAnew()
    {
        _points.Clear();
        _points.AddRange(_jumped);
        _jumped.Clear();
    }

    // Warming or cooling towards the air explains some of a change; the rest must be small.
    private static bool Follows(WarmingPoint before, WarmingPoint after)
    {
        double reachC = (after.AirC - before.PieceC) * (1 - Math.Exp(-(after.AtS - before.AtS) / QuickestS));
        double changeC = after.PieceC - before.PieceC;
        return changeC >= Math.Min(reachC, 0) - JumpC && changeC <= Math.Max(reachC, 0) + JumpC;
    }
}
