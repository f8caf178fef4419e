using BoothWatch.Film;

namespace BoothWatch.Reviews;

/// <summary>The booth air of a day as it was recorded, with its gaps.</summary>
public sealed class RecordedAir
{
    /// <summary>A gap up to this long is bridged with the air before it; over a longer one the air is not known. Own choice.</summary>
    public static readonly TimeSpan LongestBridge = TimeSpan.FromMinutes(5);

    /// <summary>A coat marked so shortly before the first record takes that record. Own choice.</summary>
    public static readonly TimeSpan LongestLead = TimeSpan.FromMinutes(1);

    /// <summary>Neighbouring moments become one step while they stay within this much, °C: far below what the sensors can tell.</summary>
    public const double SameWithinC = 0.1;

    private readonly AirMoment[] _moments;

    /// <summary>The air of some moments.</summary>
    /// <param name="moments">The moments, in any order.</param>
    public RecordedAir(IEnumerable<AirMoment> moments) => _moments = [.. moments.OrderBy(moment => moment.Time)];

    /// <summary>The moments, oldest first.</summary>
    public IReadOnlyList<AirMoment> Moments => _moments;

    /// <summary>The air at a time; null when it is not known.</summary>
    public AirMoment? At(DateTimeOffset time) => IndexAt(time) is { } at ? _moments[at] : null;

    /// <summary>Until when the air is known without a gap from a time on; null when it is not known at that time.</summary>
    public DateTimeOffset? KnownUntil(DateTimeOffset from)
    {
        if (IndexAt(from) is not { } at)
        {
            return null;
        }

        while (at + 1 < _moments.Length && _moments[at + 1].Time - _moments[at].End <= LongestBridge)
        {
            at++;
        }

        return _moments[at].End;
    }

    /// <summary>The air that a coat met which landed at a time, as far as it is known; null when it is not known at the landing.</summary>
    /// <param name="landing">When the coat landed.</param>
    /// <param name="longest">How far to look.</param>
    public AirCourse? CourseFrom(DateTimeOffset landing, TimeSpan longest)
    {
        if (IndexAt(landing) is not { } first)
        {
            return null;
        }

        List<AirStep> steps = [];
        DateTimeOffset until = landing + longest;
        for (int at = first; at < _moments.Length && _moments[at].Time < until;)
        {
            if (at > first && _moments[at].Time - _moments[at - 1].End > LongestBridge)
            {
                break;
            }

            Stretch stretch = default;
            double fromS = steps.Count == 0 ? 0 : (_moments[at].Time - landing).TotalSeconds;
            int begun = at;
            while (at < _moments.Length && (at == begun || _moments[at].Time - _moments[at - 1].End <= LongestBridge) && stretch.Takes(_moments[at]))
            {
                at++;
            }

            steps.Add(new AirStep(fromS, stretch.TemperatureC, stretch.DewPointC));
        }

        return new AirCourse(steps);
    }

    private int? IndexAt(DateTimeOffset time)
    {
        int low = 0;
        int high = _moments.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _moments[middle].Time <= time ? (middle + 1, high) : (low, middle);
        }

        return low > 0 && time - _moments[low - 1].End <= LongestBridge ? low - 1
            : low < _moments.Length && _moments[low].Time - time <= LongestLead ? low
            : null;
    }

    /// <summary>Neighbouring moments that are as good as alike, and their mean.</summary>
    private struct Stretch
    {
        private double _seconds;
        private double _temperature;
        private double _dewPoint;
        private (double Low, double High) _temperatures;
        private (double Low, double High) _dewPoints;

        public readonly double TemperatureC => _temperature / _seconds;

        public readonly double DewPointC => _dewPoint / _seconds;

        public bool Takes(AirMoment moment)
        {
            bool first = _seconds == 0;
            (double Low, double High) temperatures = Widen(_temperatures, moment.TemperatureC, first);
            (double Low, double High) dewPoints = Widen(_dewPoints, moment.DewPointC, first);
            if (temperatures.High - temperatures.Low > SameWithinC || dewPoints.High - dewPoints.Low > SameWithinC)
            {
                return false;
            }

            (_temperatures, _dewPoints) = (temperatures, dewPoints);
            double seconds = moment.Length.TotalSeconds;
            _seconds += seconds;
            _temperature += seconds * moment.TemperatureC;
            _dewPoint += seconds * moment.DewPointC;
            return true;
        }

        private static (double Low, double High) Widen((double Low, double High) range, double value, bool first) =>
            first ? (value, value) : (Math.Min(range.Low, value), Math.Max(range.High, value));
    }
}
