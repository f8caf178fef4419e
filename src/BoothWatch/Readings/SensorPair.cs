namespace BoothWatch.Readings;

/// <summary>Two sensors of the same quantity in the same place: one stands in for the other, and they must agree.</summary>
/// <remarks>
/// Only sensors of one quantity are compared. Booth and intake, or air and piece, differ for honest reasons, and no bound between
/// them holds in every shop. Pure state, times of one monotonic clock, not for use by two threads at once.
/// </remarks>
/// <param name="toleranceInUnit">Difference that is always allowed, in the unit of the quantity: stations, not parts, differ by so much. Suggested 1 °C, 5 %, 300 Pa.</param>
/// <param name="disagreeingAfter">Time of disagreement before it counts, because one part answers a gust faster than the other. Suggested 1 min.</param>
public sealed class SensorPair(double toleranceInUnit, TimeSpan disagreeingAfter)
{
    // Three standard deviations of the difference: 0.3 % of honest pairs exceed it at any one moment.
    private const double CoverageFactor = 3;

    private TimeSpan? _apartSince;

    /// <summary>The one reading that the pair stands for.</summary>
    /// <param name="first">The sensor that is used while it answers.</param>
    /// <param name="second">The sensor that stands in while the first is missing, gives no reading, is stale, is being checked or has failed its check.</param>
    /// <param name="now">The moment.</param>
    /// <exception cref="ArgumentException">The readings are of different quantities.</exception>
    public Reading Combine(Reading first, Reading second, TimeSpan now)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (first.Quantity != second.Quantity)
        {
            throw new ArgumentException($"Cannot compare {first.Quantity} with {second.Quantity}.", nameof(second));
        }

        if (!first.IsGood || !second.IsGood)
        {
            _apartSince = null;
            bool isAway = first.Quality is ReadingQuality.Missing or ReadingQuality.NoReading or ReadingQuality.Stale
                or ReadingQuality.BeingChecked or ReadingQuality.FailedCheck;
            return isAway && second.IsGood ? second : first;
        }

        if (Agree(first, second))
        {
            _apartSince = null;
            return first;
        }

        _apartSince ??= now;
        if (now - _apartSince < disagreeingAfter)
        {
            return first;
        }

        object firstValue = QuantityUnit.Write(first.Quantity, first.Value!.Value, isBare: true);
        object secondValue = QuantityUnit.Write(second.Quantity, second.Value!.Value);
        return first with
        {
            Quality = ReadingQuality.Disagreeing,
            Cause = new Cause($"{first.Sensor} reads {firstValue} and {second.Sensor} {secondValue}: one of them is wrong"),
        };
    }

    /// <summary>True when both are good and no further apart than their uncertainties and the tolerance allow, at this moment.</summary>
    /// <param name="first">One reading.</param>
    /// <param name="second">The other.</param>
    public bool Agree(Reading first, Reading second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (!first.IsGood || !second.IsGood)
        {
            return false;
        }

        return Math.Abs(first.Value!.Value - second.Value!.Value) <= LimitOf(first, second);
    }

    /// <summary>How far two readings may be apart, in the unit of the quantity: the tolerance, or three standard uncertainties of their difference.</summary>
    /// <param name="first">One reading.</param>
    /// <param name="second">The other.</param>
    public double LimitOf(Reading first, Reading second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        double spread = Math.Sqrt((first.StandardUncertainty * first.StandardUncertainty) + (second.StandardUncertainty * second.StandardUncertainty));
        return Math.Max(toleranceInUnit, CoverageFactor * spread);
    }
}
