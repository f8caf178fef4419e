using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Checks;

/// <content>What ran before this start.</content>
internal sealed partial class CheckBook
{
    // What the file and the journal know of, together.
    private void TakeUp(IReadOnlyList<HoldLine>? lines)
    {
        ReadJournal();
        foreach (HoldLine line in lines ?? [])
        {
            if (line.Quality == ReadingQuality.FailedCheck)
            {
                _failed = _failed.ContainsKey(line.Sensor) || IsOver(line) ? _failed : _failed.Add(line.Sensor, line);
            }
            else if (!_running.ContainsKey(line.Sensor))
            {
                TakeUp(new RunningCheck(line.Sensor, line.Since, line.SpareMayStandIn, _limits));
            }
        }

        if (lines is null)
        {
            LogUnreadable(_file.FilePath);
            foreach (ISensor sensor in _sensors.Where(sensor => !_running.ContainsKey(sensor.Name)))
            {
                TakeUp(new RunningCheck(sensor.Name, _time.GetUtcNow(), spareMayStandIn: false, _limits));
            }
        }

        foreach (RunningCheck check in _running.Values)
        {
            LogGoesOn(check.Sensor);
        }

        PutHolds();
    }

    private void TakeUp(RunningCheck check)
    {
        // Ended in the journal, and the file could not follow any more: it only has to settle once more.
        if (_entries.LastOrDefault(entry => entry.Sensor == check.Sensor) is { Step: CheckStep.Ended } ended && ended.At >= check.Since)
        {
            foreach (CheckEntry entry in _entries.Where(entry => entry.CheckId == ended.CheckId))
            {
                check.Apply(entry, Elapsed);
            }
        }

        _running.Add(check.Sensor, check);
    }

    private void ReadJournal()
    {
        try
        {
            IReadOnlyList<CheckEntry> all = _store.All();
            _entries.Clear();
            _entries.AddRange(all);
            (Trouble, _troubleSince) = (null, null);
        }
        catch (JournalException trouble)
        {
            (Trouble, _troubleSince) = (trouble.Message, _time.GetTimestamp());
            LogTrouble(trouble.Message);
            return;
        }

        foreach (CheckEntry[] check in _entries.Where(entry => entry.Step != CheckStep.Replaced).GroupBy(entry => entry.CheckId).Select(group => group.ToArray()))
        {
            if (check[^1].Step != CheckStep.Ended && !(_running.GetValueOrDefault(check[0].Sensor) is { Id: not null }))
            {
                RunningCheck running = new(check[0].Sensor, check[0].At, check[0].Fields.SpareMayStandIn == true, _limits);
                foreach (CheckEntry entry in check)
                {
                    running.Apply(entry, Elapsed);
                }

                _running[running.Sensor] = running;
            }
        }

        FindFailed();
    }

    private void AskTheJournalAgain()
    {
        if (_troubleSince is { } since && _time.GetElapsedTime(since) >= AskAgainAfter)
        {
            ReadJournal();
            PutHolds();
        }
    }
}
