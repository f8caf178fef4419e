namespace BoothWatch.Readings;

/// <summary>One quantity at one moment, with how far it can be trusted.</summary>
/// <param name="Quantity">What was measured; fixes the unit of <paramref name="Value"/>.</param>
/// <param name="Sensor">The configured name of the sensor, for example <c>boothAir</c>; empty when none is configured.</param>
/// <param name="Value">The value in the unit of <paramref name="Quantity"/>; null when there is none.</param>
/// <param name="StandardUncertainty">Standard uncertainty (k = 1) in the same unit, from the tolerance of the part.</param>
/// <param name="Age">Time since the sensor gave the value, by the monotonic clock.</param>
/// <param name="Quality">Whether the value may be used.</param>
/// <param name="Cause">Why not, in words a finisher understands; null when <see cref="ReadingQuality.Good"/>, except that a
/// good value that bridges a read just lost says what failed.</param>
public sealed record Reading(
    Quantity Quantity,
    string Sensor,
    double? Value,
    double StandardUncertainty,
    TimeSpan Age,
    ReadingQuality Quality,
    Cause? Cause)
{
    /// <summary>True when there is a value and it may be used.</summary>
    public bool IsGood => Quality == ReadingQuality.Good && Value is not null;

    /// <summary>The reading of a quantity that no sensor provides.</summary>
    public static Reading Missing(Quantity quantity, string cause = "no sensor is configured for it") =>
        new(quantity, "", null, 0, TimeSpan.Zero, ReadingQuality.Missing, cause);
}
