namespace BoothWatch.Readings;

/// <summary>Judges what one sensor says of one quantity.</summary>
/// <remarks>
/// Pure state: it knows the answers it was given and the times that came with them, and reads no clock. All times are of
/// one monotonic clock. Not knowing is never good: without a plausible value younger than
/// <see cref="QualityLimits.StaleAfter"/> no reading is <see cref="ReadingQuality.Good"/>. One exception is made on
/// purpose: a read that fails is bridged by the last value until that is stale; the reading stays good, its age grows
/// and its cause says what failed. An implausible value is never bridged. Not for use by two threads at once.
/// </remarks>
/// <param name="quantity">What the sensor measures.</param>
/// <param name="sensor">The configured name of the sensor.</param>
/// <param name="limits">When not to believe it.</param>
public sealed class QualityGate(Quantity quantity, string sensor, QualityLimits limits)
{
    private readonly WetSensor _wet = new(limits);
    private double? _value;
    private double _standardUncertainty;
    private TimeSpan _valueAt;
    private TimeSpan _changedAt;
    private int _equalAnswers;
    private string? _failure;

    /// <summary>A gate with the default limits of the quantity.</summary>
    public QualityGate(Quantity quantity, string sensor)
        : this(quantity, sensor, QualityLimits.Of(quantity))
    {
    }

    /// <summary>What the sensor measures.</summary>
    public Quantity Quantity => quantity;

    /// <summary>The configured name of the sensor.</summary>
    public string Sensor => sensor;

    /// <summary>Takes a value that the sensor gave.</summary>
    /// <param name="value">The value, in the unit of the quantity; any number, also one that is none.</param>
    /// <param name="standardUncertainty">Standard uncertainty (k = 1), same unit, 0 or more.</param>
    /// <param name="at">When the sensor gave it, not when it is handed over: an answer handed over again changes nothing.</param>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is negative or not a number.</exception>
    public void Accept(double value, double standardUncertainty, TimeSpan at)
    {
        if (!(standardUncertainty >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(standardUncertainty), standardUncertainty, "A standard uncertainty is 0 or more.");
        }

        bool isEqual = _value is double last && BitConverter.DoubleToInt64Bits(last) == BitConverter.DoubleToInt64Bits(value);
        if (_value is not null && (at < _valueAt || (at == _valueAt && isEqual)))
        {
            return; // an answer that was taken before
        }

        if (!isEqual)
        {
            _equalAnswers = 0;
            _changedAt = at;
        }

        _equalAnswers++;

        _value = value;
        _standardUncertainty = standardUncertainty;
        _valueAt = at;
        _failure = null;
        _wet.Take(value, at);
    }

    /// <summary>Takes note that the sensor was asked and gave no value.</summary>
    /// <param name="cause">Why, in words a finisher understands.</param>
    /// <param name="at">When it was asked.</param>
    /// <exception cref="ArgumentException">The cause is empty.</exception>
    public void Fail(string cause, TimeSpan at)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(cause);
        if (at >= _valueAt)
        {
            _failure = cause;
        }
    }

    /// <summary>The reading at a moment: the last value, its age, and whether it may be used.</summary>
    /// <param name="now">The moment, not before the last answer.</param>
    public Reading Read(TimeSpan now)
    {
        if (_value is not double value)
        {
            return _failure is null
                ? new Reading(quantity, sensor, null, 0, TimeSpan.Zero, ReadingQuality.Missing, "it has not answered yet")
                : new Reading(quantity, sensor, null, 0, TimeSpan.Zero, ReadingQuality.NoReading, _failure);
        }

        TimeSpan age = now > _valueAt ? now - _valueAt : TimeSpan.Zero;
        (ReadingQuality quality, Cause? cause) = Judge(value, age);
        return new Reading(quantity, sensor, double.IsFinite(value) ? value : null, _standardUncertainty, age, quality, cause);
    }

    // In the order in which they explain the most: no value, no plausible value, a value that is not the air's, no news.
    private (ReadingQuality Quality, Cause? Cause) Judge(double value, TimeSpan age)
    {
        if (age >= limits.StaleAfter)
        {
            return _failure is null
                ? (ReadingQuality.Stale, Say($"no answer for {age.TotalSeconds:F0} s"))
                : (ReadingQuality.NoReading, _failure);
        }

        if (!limits.Range.Contains(value))
        {
            return (ReadingQuality.OutOfRange, Say($"reads {Write(value)}, plausible is {Write(limits.Range.Lowest, isBare: true)} to {Write(limits.Range.Highest)}"));
        }

        if (value >= limits.SaturatedFromPct || value <= limits.DryEndPct)
        {
            return (ReadingQuality.Saturated, Say($"reads {Write(value)}, the end of its scale: it is wet or broken"));
        }

        if (_wet.IsWet)
        {
            return (ReadingQuality.Condensing, Say($"reads {Write(value)}: it is or was within {new Degrees(1, IsDifference: true)} of its own dew point, let it dry"));
        }

        TimeSpan still = _valueAt - _changedAt;
        if (still >= limits.FrozenAfter && _equalAnswers >= limits.FrozenAnswers)
        {
            return (ReadingQuality.Frozen, Say($"has read {Write(value)} without the least change for {still.TotalMinutes:F0} min"));
        }

        return (ReadingQuality.Good, _failure);
    }

    private object Write(double value, bool isBare = false) => QuantityUnit.Write(quantity, value, isBare);

    private static Cause Say(FormattableString words) => new(words);
}
