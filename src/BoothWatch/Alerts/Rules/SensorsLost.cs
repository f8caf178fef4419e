using BoothWatch.Readings;

namespace BoothWatch.Alerts.Rules;

/// <summary>
/// Sensors that answered well, and do not any more. What a person types in is missed in a session only; a sensor that somebody has taken away to
/// check it is not lost.
/// </summary>
public sealed class SensorsLost : IAlertRule
{
    /// <summary>Key of its one episode.</summary>
    public const string Key = "sensors";

    private const int Named = 3;

    /// <inheritdoc/>
    public IEnumerable<AlertSign> Look(AlertState state, AlertMoment moment, AlertLimits limits)
    {
        Reading[] lost = [.. Lost(state, moment, limits)];
        bool inSession = state.Session.IsActive;
        if (lost.Length == 0)
        {
            Reading[] bad = [.. StillBad(state, moment)];
            if (bad.Length == 0 || bad.Any(reading => !limits.TypedByHand.Contains(reading.Quantity)))
            {
                yield return new AlertSign(
                    Key,
                    AlertKind.SensorsLost,
                    AlertLevel.Warning,
                    bad.Length == 0 ? SignState.Off : SignState.Holding,
                    "Sensors answer again",
                    "every sensor that was lost reads well again",
                    "");
            }

            // Else only what was typed in has run out, which is no loss any more and no all-clear either: the episode lapses.
            yield break;
        }

        // The level does not rise within an episode: a session that begins without its sensors has wait on the light from the start.
        AlertLevel level = state.Open.GetValueOrDefault(Key)?.Level ?? (inSession ? AlertLevel.Urgent : AlertLevel.Warning);
        string more = lost.Length > Named ? FormattableString.Invariant($", and {lost.Length - Named} more") : "";
        yield return new AlertSign(
            Key,
            AlertKind.SensorsLost,
            level,
            SignState.On,
            inSession ? "Wait: sensors lost" : "Sensors lost",
            string.Join("; ", lost.Take(Named).Select(Words)) + more,
            "look at the sensor and its wiring; until it answers, what it measures is not known")
        {
            After = inSession ? AlertLimits.SensorsLostInSession : limits.SensorsLostAfter,
        };
    }

    /// <summary>The readings that are lost now.</summary>
    internal static IEnumerable<Reading> Lost(AlertState state, AlertMoment moment, AlertLimits limits) =>
        ReadingsOf(moment)
            .Where(reading => !reading.IsGood && reading.Quality != ReadingQuality.BeingChecked && state.WereGood.Contains((reading.Sensor, reading.Quantity)))
            .Where(reading => state.Session.IsActive || !limits.TypedByHand.Contains(reading.Quantity))
            .OrderBy(reading => reading.Quantity).ThenBy(reading => reading.Sensor, StringComparer.Ordinal);

    /// <summary>True when all that a quantity is lost for is in the message of lost sensors: told in this session, or about to be.</summary>
    internal static bool Tells(Quantity quantity, AlertState state, AlertMoment moment, AlertLimits limits)
    {
        Reading reading = moment.Assessment.Snapshot[quantity];
        bool isHeard = (state.Open.GetValueOrDefault(Key)?.IsTold ?? false)
            || limits.QuietUntil(AlertKind.SensorsLost, moment) is null
            || limits.QuietUntil(AlertKind.VerdictWorse, moment) is not null;
        return !reading.IsGood && state.Lost.Told.Contains((reading.Sensor, reading.Quantity)) && isHeard;
    }

    // What the open episode is about and does not read well. Of an episode of an earlier run nobody knows: then all must read well.
    private static IEnumerable<Reading> StillBad(AlertState state, AlertMoment moment) =>
        ReadingsOf(moment).Where(reading => !reading.IsGood && (state.Lost.Missed?.Contains((reading.Sensor, reading.Quantity)) ?? true));

    /// <summary>Every reading of a configured sensor.</summary>
    internal static IEnumerable<Reading> ReadingsOf(AlertMoment moment) =>
        moment.Assessment.Snapshot.Readings.Values.Concat(moment.Assessment.Snapshot.Others).Where(reading => reading.Sensor.Length > 0);

    private static string Words(Reading reading)
    {
        string quantity = reading.Quantity switch
        {
            Quantity.BoothTemperature => "booth temperature",
            Quantity.BoothHumidity => "booth humidity",
            Quantity.IntakeTemperature => "intake temperature",
            Quantity.IntakeHumidity => "intake humidity",
            Quantity.StationPressure => "air pressure",
            Quantity.PieceTemperature => "piece temperature",
            Quantity.ExhaustProof => "proof of exhaust",
            _ => "filter pressure drop",
        };
        return $"{quantity} ({reading.Sensor}): {reading.Cause ?? "no reading"}";
    }
}
