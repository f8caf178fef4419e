using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>One reading in the JSON.</summary>
/// <param name="Quantity">What was measured.</param>
/// <param name="Sensor">The configured name of the sensor; empty when none is configured.</param>
/// <param name="Value">The value; null when there is none.</param>
/// <param name="Unit">Its unit; empty for a yes or no.</param>
/// <param name="StandardUncertainty">Standard uncertainty (k = 1), same unit.</param>
/// <param name="AgeS">Age of the value at the time of the assessment, s.</param>
/// <param name="Quality">Whether the value may be used.</param>
/// <param name="Cause">Why not; null when it may.</param>
public sealed record ReadingAnswer(
    Quantity Quantity,
    string Sensor,
    double? Value,
    string Unit,
    double StandardUncertainty,
    double AgeS,
    ReadingQuality Quality,
    string? Cause)
{
    /// <summary>Renders a reading; the words of its cause are for people, in the unit that they read.</summary>
    public static ReadingAnswer Of(Reading reading, TemperatureUnit unit) => new(
        reading.Quantity, reading.Sensor, reading.Value, QuantityUnit.Of(reading.Quantity), reading.StandardUncertainty,
        Math.Round(reading.Age.TotalSeconds, 2), reading.Quality, reading.Cause is { } cause ? new TemperatureText(unit).Of(cause) : null);
}
