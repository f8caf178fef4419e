namespace BoothWatch.Readings;

/// <summary>Whether a reading may be used, and if not, why not. Only <see cref="Good"/> may lead to a verdict of spray.</summary>
public enum ReadingQuality
{
    /// <summary>No sensor is configured for this quantity, or none has answered yet.</summary>
    Missing,

    /// <summary>The sensor answered in time with a plausible, moving, agreeing value.</summary>
    Good,

    /// <summary>The sensor was asked and gave no reading (no acknowledge, bad CRC, all-zero answer, ...).</summary>
    NoReading,

    /// <summary>The last good value is older than allowed.</summary>
    Stale,

    /// <summary>The value has not moved by one bit for longer than real air allows.</summary>
    Frozen,

    /// <summary>The value is outside what the part can measure or a shop can have.</summary>
    OutOfRange,

    /// <summary>A humidity at the end of its scale: the part is saturated, or wet.</summary>
    Saturated,

    /// <summary>Two sensors that should agree do not.</summary>
    Disagreeing,

    /// <summary>The sensor itself is within reach of dew, so it no longer measures the air.</summary>
    Condensing,

    /// <summary>Somebody checks the sensor against a salt point: it is in a jar, on its way there or back, and does not measure the booth.</summary>
    BeingChecked,

    /// <summary>The last check found the sensor out of its tolerance, and nobody has replaced it.</summary>
    FailedCheck,
}
