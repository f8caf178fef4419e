using System.Globalization;
using BoothWatch.Readings;

namespace BoothWatch.Checks;

/// <summary>
/// Watches humidity and temperature at one place until they stand still: in a jar over salt, and back in the booth afterwards.
/// Pure state, times of one monotonic clock, not for use by two threads at once.
/// </summary>
/// <remarks>
/// Readings are averaged over slices of a thirtieth of <see cref="SettlingLimits.Over"/>, which takes the noise of the part away, and the
/// highest slice less the lowest is the change. So a slow creep and a swing to and fro count alike. The temperature counts too: where
/// the sensor is a degree warmer than the salt it reads 6 % less of the humidity, several points over sodium chloride.
/// </remarks>
/// <param name="limits">When they count as settled.</param>
/// <param name="since">When it began.</param>
public sealed class Settling(SettlingLimits limits, TimeSpan since)
{
    private const int Slices = 30;

    private readonly List<Slice> _slices = [];
    private TimeSpan? _last;

    /// <summary>Takes a reading. One that is not newer than the last, or from before the beginning, or that is no number, changes nothing.</summary>
    /// <param name="humidityPct">Relative humidity, %.</param>
    /// <param name="temperatureC">Temperature, °C.</param>
    /// <param name="at">When the sensor gave it.</param>
    public void Take(double humidityPct, double temperatureC, TimeSpan at)
    {
        if (at < since || at <= _last || !double.IsFinite(humidityPct) || !double.IsFinite(temperatureC))
        {
            return;
        }

        if (at - _last > limits.LongestGap)
        {
            _slices.Clear();
        }

        _last = at;
        long number = (at - since).Ticks / Math.Max(1, limits.Over.Ticks / Slices);
        if (_slices.Count == 0 || _slices[^1].Number != number)
        {
            _slices.Add(new Slice(number, at));
        }

        _slices[^1].Add(humidityPct, temperatureC);

        // The oldest slice that is kept began before the time that counts, so that it is known to be covered.
        while (_slices.Count > 1 && _slices[1].From <= at - limits.Over)
        {
            _slices.RemoveAt(0);
        }
    }

    /// <summary>How settled they are.</summary>
    /// <param name="now">The moment, not before the last reading.</param>
    public SettlingState At(TimeSpan now)
    {
        TimeSpan elapsed = now > since ? now - since : TimeSpan.Zero;
        if (_slices.Count == 0 || now - _last > limits.LongestGap)
        {
            return new SettlingState(elapsed < limits.LongestGap ? "no reading yet" : "no reading", null, null, 0, 0, elapsed);
        }

        double humidityChange = _slices.Max(slice => slice.HumidityPct) - _slices.Min(slice => slice.HumidityPct);
        double temperatureChange = _slices.Max(slice => slice.TemperatureC) - _slices.Min(slice => slice.TemperatureC);
        TimeSpan seen = now - _slices[0].From;
        TimeSpan left = Later(limits.AtLeast - elapsed, limits.Over - seen);
        Cause? notYet =
            temperatureChange > limits.TemperatureC ? Moving("temperature", Degrees(temperatureChange), Degrees(limits.TemperatureC), seen)
            : humidityChange > limits.HumidityPct ? Moving("humidity", Percent(humidityChange), Percent(limits.HumidityPct), seen)
            : left > TimeSpan.Zero ? new Cause($"steady so far, {Words(left)} to go")
            : null;
        return new SettlingState(
            notYet,
            _slices.Average(slice => slice.HumidityPct),
            _slices.Average(slice => slice.TemperatureC),
            humidityChange,
            temperatureChange,
            elapsed);
    }

    private Cause Moving(string what, object change, object allowed, TimeSpan seen) =>
        new($"the {what} has moved by {change} in the last {Words(seen < limits.Over ? seen : limits.Over)}, at most {allowed} is wanted over {Words(limits.Over)}");

    private static Degrees Degrees(double differenceC) => new(Math.Round(differenceC, 1), IsDifference: true);

    private static string Percent(double pct) => string.Create(CultureInfo.InvariantCulture, $"{pct:0.0} %");

    private static TimeSpan Later(TimeSpan first, TimeSpan second) => first > second ? first : second;

    // Rounded up: what is left is never said to be less.
    private static string Words(TimeSpan time) =>
        time.TotalMinutes >= 90 ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(time.TotalHours * 2) / 2:0.#} h")
        : time.TotalMinutes > 1.5 ? $"{Math.Ceiling(time.TotalMinutes):0} min"
        : $"{Math.Ceiling(time.TotalSeconds):0} s";

    private sealed class Slice(long number, TimeSpan from)
    {
        private double _humiditySum;
        private double _temperatureSum;
        private int _count;

        public long Number => number;

        public TimeSpan From => from;

        public double HumidityPct => _humiditySum / _count;

        public double TemperatureC => _temperatureSum / _count;

        public void Add(double humidityPct, double temperatureC)
        {
            _humiditySum += humidityPct;
            _temperatureSum += temperatureC;
            _count++;
        }
    }
}
