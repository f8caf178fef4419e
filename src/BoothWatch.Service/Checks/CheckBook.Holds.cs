using System.Collections.Immutable;
using System.Globalization;
using BoothWatch.Checks;
using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service.Checks;

/// <content>Which sensors are held, in memory and in the file.</content>
internal sealed partial class CheckBook
{
    // By the journal; and by the file, as long as the journal does not know what became of it.
    private void FindFailed()
    {
        ImmutableDictionary<string, HoldLine> found = _entries
            .Select(entry => entry.Sensor)
            .Distinct()
            .Select(sensor => (Sensor: sensor, History: HistoryOf(sensor)))
            .Where(sensor => sensor.History.Failure is not null)
            .ToImmutableDictionary(sensor => sensor.Sensor, sensor => Failed(sensor.Sensor, sensor.History.Failure!, sensor.History));
        _failed = found.AddRange(_failed.Where(line => !found.ContainsKey(line.Key) && !IsOver(line.Value)));
    }

    private static HoldLine Failed(string sensor, DatedResult failure, CheckHistory history) =>
        new(sensor, ReadingQuality.FailedCheck, failure.At, SpareMayStandIn: true) { Salt = failure.Result.Salt, Part = history.PartOf(failure) };

    // The journal has that result itself and judges it; or the part was replaced since, or found within over the same salt by a check that
    // has ended: until then that result may still be cancelled.
    private bool IsOver(HoldLine failed) =>
        _entries.Any(entry => entry.Sensor == failed.Sensor && entry.Step == CheckStep.Result && (entry.At - failed.Since).Duration() < TimeSpan.FromMilliseconds(2))
        || HistoryOf(failed.Sensor) is var history && (history.Replaced > failed.Since
            || history.Checks.Where(check => check is { Ended: not null, IsCancelled: false }).SelectMany(check => check.Results).Any(dated =>
                dated.At > failed.Since && dated.Result.Salt == failed.Salt && dated.Result.Outcome == CheckOutcome.Within));

    private IEnumerable<HoldLine> Lines() =>
    [
        .. _running.Values.Select(check => new HoldLine(check.Sensor, ReadingQuality.BeingChecked, check.Since, check.SpareMayStandIn) { Part = check.Part }),
        .. _failed.Values.Where(line => !_running.ContainsKey(line.Sensor)),
    ];

    private void PutHolds() => Holds.Set(Lines().ToImmutableDictionary(line => line.Sensor, line => new SensorHold(
        line.Quality,
        line.Quality == ReadingQuality.BeingChecked
            ? $"being checked against a salt point since {Local(line.Since)}"
            : $"out of tolerance over a salt point on {Local(line.Since)}",
        line.SpareMayStandIn)));

    private string Local(DateTimeOffset time) =>
        TimeZoneInfo.ConvertTime(time, _time.LocalTimeZone).ToString("d MMM, HH:mm", CultureInfo.InvariantCulture);

    // Failed holds go along, so that they outlive a journal that is set aside.
    private void WriteFile()
    {
        try
        {
            HoldLine[] lines = [.. Lines(), .. _failed.Values.Where(line => _running.ContainsKey(line.Sensor))];
            _file.Write(lines);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            throw new JournalException($"{_file.FilePath} cannot be written: {refused.Message}", refused);
        }
    }

    private void TryWriteFile()
    {
        try
        {
            WriteFile();
        }
        catch (JournalException trouble)
        {
            LogTrouble(trouble.Message);
        }
    }
}
