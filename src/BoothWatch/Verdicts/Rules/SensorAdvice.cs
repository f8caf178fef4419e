using BoothWatch.Readings;

namespace BoothWatch.Verdicts.Rules;

/// <summary>What to say and do about a reading that may not be used.</summary>
internal static class SensorAdvice
{
    /// <summary>What is wrong, for example <c>CRC of the humidity word is 0x12, expected 0x92</c>.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="text">Writes the temperatures in it.</param>
    public static string Cause(Reading reading, TemperatureText text) => reading.Cause is { } cause ? text.Of(cause) : reading.Quality switch
    {
        ReadingQuality.Missing => "no sensor is configured for it",
        ReadingQuality.NoReading => "the sensor gave no reading",
        ReadingQuality.Stale => "the last value is too old",
        ReadingQuality.Frozen => "the value no longer moves",
        ReadingQuality.OutOfRange => "the value cannot be true",
        ReadingQuality.Saturated => "the sensor is at the end of its scale",
        ReadingQuality.Disagreeing => "two sensors disagree",
        ReadingQuality.Condensing => "the sensor itself is close to dew",
        ReadingQuality.BeingChecked => "the sensor is being checked against a salt point",
        ReadingQuality.FailedCheck => "the sensor failed its check against a salt point",
        _ => "there is no value",
    };

    /// <summary>What to do about it.</summary>
    public static string Action(Reading reading)
    {
        string sensor = reading.Sensor.Length == 0 ? "the sensor" : $"sensor {reading.Sensor}";
        return reading.Quality switch
        {
            ReadingQuality.Missing when reading.Sensor.Length == 0 => "wait, and add a sensor for it to the configuration",
            ReadingQuality.Missing => "wait for its first answer",
            ReadingQuality.Saturated or ReadingQuality.Condensing => $"wait, and let {sensor} dry",
            ReadingQuality.BeingChecked => $"wait, and finish the check of {sensor} on the page Sensor checks",
            ReadingQuality.FailedCheck => $"wait, and replace {sensor}, or check it again",
            ReadingQuality.Disagreeing => "wait, and check both sensors against a salt point or a thermometer",
            _ => $"wait, and check {sensor} and its wiring",
        };
    }
}
